package debrief

// Decisions in communicating and recording.

var telling = []aspect{}
