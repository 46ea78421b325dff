package shelf

// A browser has no drivers: a book cannot be kept there, and opening one says so.

func causeOf(error) cause { return otherCause }
