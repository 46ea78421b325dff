// Package assets holds what is shipped inside the programs: the typeface of the
// window and of the reports. It imports nothing but embed, so that a program
// without a window can use it.
package assets

import _ "embed"

// InterRegular is the typeface Inter, weight 400, as TrueType data.
// Licence: SIL Open Font License 1.1, see InterLicence.
//
//go:embed Inter-Regular.ttf
var InterRegular []byte

// InterSemiBold is the typeface Inter, weight 600, as TrueType data.
//
//go:embed Inter-SemiBold.ttf
var InterSemiBold []byte

// InterLicence is the text of the licence both files are shipped under.
//
//go:embed Inter-LICENSE.txt
var InterLicence string
