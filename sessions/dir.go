package sessions

import "path/filepath"

// DefaultDir is the sessions' folder: own, the value of $HANGTAPE_DIR, or where
// that is empty the program's folder in the platform's data folder.
func DefaultDir(own, dataHome string) string {
	if own != "" {
		return own
	}
	return filepath.Join(dataHome, "hangtape")
}
