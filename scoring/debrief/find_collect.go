package debrief

// Decisions in collecting.

var collecting = []aspect{}
