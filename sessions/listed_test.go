package sessions

// listed are the files of the folder as LoadFor reads them, by name.
func listed(st *Store) ([]fileFound, error) {
	paths, _, err := st.inside()
	if err != nil {
		return nil, err
	}
	school, err := st.School()
	if err != nil {
		return nil, err
	}
	var all []fileFound
	for _, path := range paths {
		f, err := st.LoadFor(path, school)
		all = append(all, fileFound{path, f, err})
	}
	return all, nil
}
