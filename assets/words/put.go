// Putting values into texts that are said in every frame of a window. A line that was said before is given again without
// making anything: neither its text nor the boxes its values would be handed on in.

package words

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"
)

// maxSaid bounds the lines kept; figures that change all the time would else grow it for ever.
const maxSaid = 4096

var (
	saidLock sync.Mutex
	said     = map[string]string{}
	line     []byte
)

// Line is Say for what is drawn in every frame. Its args may be texts, int, int64, uint64 and float64 alone: what else fmt
// knows it would have to hand on, and so keep. Anything else is shown as a gap.
func Line(key string, args ...any) string {
	text, ok := find(key)
	switch {
	case !ok:
		return "‹" + key + "›"
	case len(args) == 0:
		return text
	}
	return put(text, args)
}

// put writes args into text as fmt does.
func put(text string, args []any) string {
	saidLock.Lock()
	defer saidLock.Unlock()
	b, n := line[:0], 0
	for {
		at := strings.IndexByte(text, '%')
		if at < 0 {
			break
		}
		b = append(b, text[:at]...)
		v, rest := verbOf(text[at+1:])
		text = rest
		switch {
		case v.letter == '%':
			b = append(b, '%')
		case n >= len(args):
			b = append(b, "%!"...) // as fmt marks what is missing
			b = append(b, v.letter)
			b = append(b, "(MISSING)"...)
		default:
			b = v.value(b, args[n])
			n++
		}
	}
	b = append(b, text...)
	line = b
	if s, ok := said[string(b)]; ok {
		return s
	}
	if len(said) >= maxSaid {
		clear(said)
	}
	s := string(b)
	said[s] = s
	return s
}

// verb is one place of a text where a value goes.
type verb struct {
	letter           byte
	width, precision int // precision -1 when not given
}

// verbOf reads what stands behind a % and gives what comes after it.
func verbOf(text string) (v verb, rest string) {
	v.precision = -1
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '.':
			v.precision = 0
		case c >= '0' && c <= '9' && v.precision >= 0:
			v.precision = 10*v.precision + int(c-'0')
		case c >= '0' && c <= '9':
			v.width = 10*v.width + int(c-'0')
		default:
			v.letter = c
			return v, text[i+1:]
		}
	}
	return v, ""
}

// value writes one value. No value is handed on as it came, which would cost a box for each at every call.
func (v verb) value(b []byte, arg any) []byte {
	from := len(b)
	switch x := arg.(type) {
	case string:
		if v.letter == 'q' {
			b = strconv.AppendQuote(b, x)
		} else {
			b = append(b, x...)
		}
	case int:
		b = strconv.AppendInt(b, int64(x), 10)
	case int64:
		b = strconv.AppendInt(b, x, 10)
	case uint64:
		b = strconv.AppendUint(b, x, 10)
	case float64:
		form := byte('f')
		precision := v.precision
		if v.letter != 'f' {
			form = 'g'
		} else if precision < 0 {
			precision = 6
		}
		b = strconv.AppendFloat(b, x, form, precision, 64)
	default:
		b = append(b, "‹?›"...)
	}
	for short := v.width - utf8.RuneCount(b[from:]); short > 0; short-- {
		b = slices.Insert(b, from, ' ')
	}
	return b
}
