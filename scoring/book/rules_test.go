package book_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

// Who may write what.

// What the rules forbid is refused, with its reason, and nothing is written.
func TestWhatIsNotAllowedIsRefused(t *testing.T) {
	b, m, e := full(t)
	id := e["signoff"].Leaf.ID
	b.Must(t, &book.Key{Person: booktest.Second, Role: book.Learner}, nil, booktest.Admin) // an assessor who also learns
	own := b.Must(t, booktest.SignOff(t, file(t), booktest.Second, booktest.First), file(t), booktest.First).Leaf.ID
	before := len(m.All)
	good := func(change func(s *book.SignOff)) *book.SignOff {
		s := booktest.SignOff(t, file(t), booktest.Trainee, booktest.First)
		change(s)
		return s
	}
	b.Keys["stranger"], _ = book.NewSigner(bytes.NewReader(make([]byte, 32)))
	for name, c := range map[string]struct {
		body any
		who  string
		want string
	}{
		"one's own":            {good(func(s *book.SignOff) { s.Learner = booktest.First }), booktest.First, "no one signs their own"},
		"for somebody else":    {good(func(s *book.SignOff) { s.Assessor = booktest.Second }), booktest.First, "it names AS-2 and is signed by AS-1"},
		"an administrator's":   {good(func(s *book.SignOff) { s.Assessor = booktest.Admin }), booktest.Admin, "only an assessor may"},
		"a stranger's":         {good(func(s *book.SignOff) {}), "stranger", "is not of this book"},
		"an unknown learner":   {good(func(s *book.SignOff) { s.Learner = "P-99" }), booktest.First, "no learner of this book"},
		"no reason":            {good(func(s *book.SignOff) { s.Outcome = book.NotYet }), booktest.First, "say why in the override"},
		"nothing overridden":   {good(func(s *book.SignOff) { s.Override = "because" }), booktest.First, "nothing to override"},
		"an outcome unknown":   {good(func(s *book.SignOff) { s.Outcome = "fine" }), booktest.First, "is no outcome"},
		"earlier ones hidden":  {good(func(s *book.SignOff) { s.Number = 3 }), booktest.First, "lists 0 before it"},
		"practice":             {good(func(s *book.SignOff) { s.Mode = "practice" }), booktest.First, "practice shows no competence"},
		"a rating by oneself":  {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.First, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.First, "a second rater is somebody else"},
		"a level unknown":      {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 9, "", ""}}}, booktest.Second, "has level 9"},
		"a person by another":  {&book.Key{Person: "P-10", Role: book.Learner}, booktest.First, "only an administrator"},
		"a name for a code":    {&book.Key{Person: "Jane Miller", Role: book.Learner}, booktest.Admin, "is no code"},
		"the last one":         {&book.Key{Person: booktest.Admin, Role: book.Administrator, Ended: true}, booktest.Admin, "the last administrator"},
		"a void of nothing":    {&book.Void{Of: "00", Learner: booktest.Trainee, Assessor: booktest.First, Reason: "mistaken"}, booktest.First, "there is no record"},
		"a void unexplained":   {&book.Void{Of: id, Learner: booktest.Trainee, Assessor: booktest.First}, booktest.First, "the reason is missing"},
		"a plan by another":    {&book.PlanText{By: booktest.First, YAML: "format: 1"}, booktest.First, "only an administrator"},
		"deleting a key":       {&book.Forget{Of: b.Entries[1].Leaf.ID, By: booktest.Admin, Reason: "wish"}, booktest.Admin, "cannot be deleted"},
		"an event unknown":     {&book.Event{By: booktest.First, What: "party", Date: "2031-01-01", Reason: "x"}, booktest.First, "is no event"},
		"a case of one's own":  {&book.Case{Learner: booktest.First, Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}, booktest.First, "no one signs their own"},
		"a case of nobody":     {&book.Case{Learner: "P-99", Assessor: booktest.First, Competency: "salvage", Date: "2031-05-10"}, booktest.First, "no learner of this book"},
		"a case by another":    {&book.Case{Learner: booktest.Trainee, Assessor: booktest.Admin, Competency: "salvage", Date: "2031-05-10"}, booktest.Admin, "only an assessor may"},
		"a case for nothing":   {&book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Date: "2031-05-10"}, booktest.First, "the competency is missing"},
		"one's own event":      {&book.Event{Learner: booktest.Second, By: booktest.Second, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, booktest.Second, "no one signs their own"},
		"an event unexplained": {&book.Event{By: booktest.First, What: book.EventAway, Date: "2031-01-01"}, booktest.First, "the reason is missing"},
		"an event of nobody":   {&book.Event{Learner: "P-99", By: booktest.First, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, booktest.First, "no learner of this book"},
		"an event some day":    {&book.Event{By: booktest.First, What: book.EventAway, Date: "soon", Reason: "x"}, booktest.First, "is no date"},
		"an event at length":   {&book.Event{By: booktest.First, What: book.EventAway, Date: "2031-01-01", Reason: strings.Repeat("x", 4001)}, booktest.First, "4000 are the most"},
		"an event of another":  {&book.Event{By: booktest.Second, What: book.EventAway, Date: "2031-01-01", Reason: "x"}, booktest.First, "it names AS-2 and is signed by AS-1"},
		"one's own rated":      {&book.Rating{Of: own, Learner: booktest.Second, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "no one signs their own"},
		"another's rated":      {&book.Rating{Of: id, Learner: booktest.Other, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "is none of P-08"},
		"a rating of nothing":  {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second}, booktest.Second, "nothing is rated"},
		"one's own made void":  {&book.Void{Of: own, Learner: booktest.Second, Assessor: booktest.Second, Reason: "mistaken"}, booktest.Second, "no one signs their own"},
		"another's void":       {&book.Void{Of: id, Learner: booktest.Other, Assessor: booktest.First, Reason: "mistaken"}, booktest.First, "is none of P-08"},
		"void by another":      {&book.Void{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second, Reason: "mistaken"}, booktest.First, "it names AS-2 and is signed by AS-1"},
		"a void at length":     {&book.Void{Of: id, Learner: booktest.Trainee, Assessor: booktest.First, Reason: strings.Repeat("x", 4001)}, booktest.First, "4000 are the most"},
		"rated for another":    {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.First, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "a second rater is somebody else"},
		"rated as another":     {&book.Rating{Of: own, Learner: booktest.Second, Assessor: booktest.Admin, Rated: []book.Rated{{"handover", 3, "", ""}}}, booktest.Second, "it names ADM-1 and is signed by AS-2"},
		"rated at length":      {&book.Rating{Of: id, Learner: booktest.Trainee, Assessor: booktest.Second, Rated: []book.Rated{{"handover", 3, "", ""}}, Comments: strings.Repeat("x", 4001)}, booktest.Second, "4000 are the most"},
		"a lot at length":      {good(func(s *book.SignOff) { s.Training = []book.Training{{"lot", strings.Repeat("x", 4001)}} }), booktest.First, "4000 are the most"},
		"deleting nothing":     {&book.Forget{Of: "00", By: booktest.Admin, Reason: "wish"}, booktest.Admin, "there is no record 00"},
		"a void of a plan":     {&book.Void{Of: e["plan"].Leaf.ID, Assessor: booktest.First, Reason: "mistaken"}, booktest.First, "cannot be made void"},
		"deleting by another":  {&book.Forget{Of: id, By: booktest.First, Reason: "wish"}, booktest.First, "only an administrator may"},
		"deleting unexplained": {&book.Forget{Of: id, By: booktest.Admin}, booktest.Admin, "the reason is missing"},
		"a real lot":           {good(func(s *book.SignOff) { s.Training = []book.Training{{"patient", "x"}} }), booktest.First, "kept for practice: lot, operator or incident"},
		"an empty lot":         {good(func(s *book.SignOff) { s.Training = []book.Training{{"lot", ""}} }), booktest.First, "the lot is missing"},
		"a mark from nowhere":  {good(func(s *book.SignOff) { s.MarkSetBy = "" }), booktest.First, "pass mark was set is missing"},
		"for no role":          {good(func(s *book.SignOff) { s.For = "" }), booktest.First, "role that the learner trains for is missing"},
		"rated twice":          {good(func(s *book.SignOff) { s.Rated = []book.Rated{{"handover", 3, "", ""}, {"handover", 2, "", ""}} }), booktest.First, "rated twice"},
		"no zone":              {good(func(s *book.SignOff) { s.Date = "2031-05-14T10:00:00" }), booktest.First, "has no zone"},
		"in place of another":  {good(func(s *book.SignOff) { s.Supersedes = own }), booktest.First, "is no sign-off of P-07"},
		"in place of nothing":  {good(func(s *book.SignOff) { s.Supersedes = "00" }), booktest.First, "there is no record 00 to supersede"},
		"in place of an event": {good(func(s *book.SignOff) { s.Supersedes = e["event"].Leaf.ID }), booktest.First, "is no sign-off of P-07"},
		"too much said":        {good(func(s *book.SignOff) { s.Feedback = strings.Repeat("x", 4001) }), booktest.First, "4000 are the most"},
		"a role twice":         {&book.Key{Person: booktest.Trainee, Role: book.Learner}, booktest.Admin, "is learner already"},
		"a role unknown":       {&book.Key{Person: "P-11", Role: "chief"}, booktest.Admin, "is no role"},
		"an end of nobody":     {&book.Key{Person: "P-11", Role: book.Learner, Ended: true}, booktest.Admin, "is no learner of this book"},
		"a key twice":          {&book.Key{Person: "AS-3", Role: book.Assessor, Public: b.Keys[booktest.First].Public()}, booktest.Admin, "this key is of the book already"},
		"no key":               {&book.Key{Person: "AS-3", Role: book.Assessor}, booktest.Admin, "this is no public key"},
		"a plan with faults":   {&book.PlanText{By: booktest.Admin, YAML: "format: 2"}, booktest.Admin, "plan:1:"},
		"due some day":         {good(func(s *book.SignOff) { s.Due = "soon" }), booktest.First, `the date due again "soon" is no date`},
		"a date unreadable":    {&book.Case{Learner: booktest.Trainee, Assessor: booktest.First, Competency: "salvage", Date: "10.5.2031"}, booktest.First, "is no date"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := b.Write(c.body, file(t), b.Keys[c.who])
			if _, ok := c.body.(*book.SignOff); !ok {
				_, err = b.Write(c.body, nil, b.Keys[c.who])
			}
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%v, want %q", err, c.want)
			}
			if int(b.Size()) != before || len(m.All) != before {
				t.Errorf("%d records in the book, %d in the store", b.Size(), len(m.All))
			}
		})
	}
}

func TestABookBeginsWithItsAdministrator(t *testing.T) {
	m := &booktest.Memory{Name: "department.example/rouleau"}
	b, err := book.Open(m, &booktest.Chance{}, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	key, err := book.NewSigner(&booktest.Chance{N: 50})
	if err != nil {
		t.Fatal(err)
	}
	other, err := book.NewSigner(&booktest.Chance{N: 60})
	if err != nil {
		t.Fatal(err)
	}
	for name, body := range map[string]any{
		"an assessor":    &book.Key{Person: "AS-1", Role: book.Assessor, Public: key.Public()},
		"an end":         &book.Key{Person: "ADM-1", Role: book.Administrator, Public: key.Public(), Ended: true},
		"a name":         &book.Key{Person: "Robin", Role: book.Administrator, Public: key.Public()},
		"a key of other": &book.Key{Person: "ADM-1", Role: book.Administrator, Public: other.Public()},
		"an event":       &book.Event{By: "ADM-1", What: book.EventAway, Date: "2031-01-01", Reason: "x"},
	} {
		if _, err := b.Write(body, nil, key); err == nil || b.Size() != 0 || len(m.All) != 0 {
			t.Errorf("a book begins with %s: %v", name, err)
		}
	}
	if _, err := b.Write(&book.Key{Person: "ADM-1", Role: book.Administrator, Public: key.Public()}, nil, key); err != nil {
		t.Error(err)
	}
}

func TestAnEndedKeySignsNothing(t *testing.T) {
	b, _, _ := full(t)
	b.Must(t, &book.Key{Person: booktest.First, Role: book.Assessor, Ended: true, Reason: "left"}, nil, booktest.Admin)
	_, err := b.Write(booktest.SignOff(t, file(t), booktest.Trainee, booktest.First), file(t), b.Keys[booktest.First])
	if err == nil || !strings.Contains(err.Error(), "had ended") {
		t.Error(err)
	}
	if slices.ContainsFunc(b.People(), func(p book.Person) bool { return p.Code == booktest.First }) {
		t.Error("who has left is still among the people")
	}
}
