package fit

// Blocks are the inputs of m that are correlated, for tests that draw them.
func (m *Model) Blocks() []Block { return m.blocks }
