package debrief

// Decisions in returning.

var returning = []aspect{}
