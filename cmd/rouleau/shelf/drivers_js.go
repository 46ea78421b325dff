package shelf

// A browser has no drivers: a book cannot be kept there, and opening one says so.

func causeOf(error) cause { return otherCause }

func refusal(error) (answered bool, why string, ok bool) { return false, "", false }
