package matrix

// child serves as a bot process if the test binary was started as one.
func child() {}
