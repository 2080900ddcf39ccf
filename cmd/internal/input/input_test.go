package input

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// meanwhile is a file to which something happens after its first bytes were read.
type meanwhile struct {
	*os.File
	happens func()
}

func (m *meanwhile) Read(b []byte) (int, error) {
	n, err := m.File.Read(b[:min(len(b), 100)])
	if m.happens != nil {
		m.happens()
		m.happens = nil
	}
	return n, err
}

func TestChangedWhileRead(t *testing.T) {
	text := strings.Repeat("item,price\n", 300)
	for _, c := range []struct {
		reason  string
		happens func(name string) error
		want    error
	}{
		{"nothing", func(string) error { return nil }, nil},
		{"cut short", func(name string) error { return os.Truncate(name, 1000) }, ErrChanged},
		{"emptied", func(name string) error { return os.Truncate(name, 0) }, ErrChanged},
		{"more written", func(name string) error { return os.WriteFile(name, []byte(text+"more,1\n"), 0o666) }, ErrChanged},
		{"other text, as long", func(name string) error {
			return os.WriteFile(name, []byte(strings.ToUpper(text)), 0o666)
		}, ErrChanged},
		// whoever replaces a file by name leaves the one that is read as it was
		{"replaced by name", func(name string) error {
			if err := os.WriteFile(name+".new", []byte("other"), 0o666); err != nil {
				return err
			}
			return os.Rename(name+".new", name)
		}, nil},
	} {
		t.Run(c.reason, func(t *testing.T) {
			name := filepath.Join(t.TempDir(), "prices.csv")
			if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
			// a disk may tell times by the second or two (FAT)
			old := time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC)
			if err := os.Chtimes(name, old, old); err != nil {
				t.Fatal(err)
			}
			f, err := os.Open(name)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			data, err := whole(&meanwhile{f, func() {
				if err := c.happens(name); err != nil {
					t.Fatal(err)
				}
			}}, 1<<20)
			if !errors.Is(err, c.want) {
				t.Fatalf("error = %v, want %v", err, c.want)
			}
			if err == nil && string(data) != text {
				t.Errorf("read %d bytes that are not the file's %d", len(data), len(text))
			}
		})
	}
}

func TestWhole(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "a")
	if err := os.WriteFile(name, []byte("0123456789"), 0o666); err != nil {
		t.Fatal(err)
	}
	for most, want := range map[int64]string{100: "0123456789", 10: "0123456789", 9: "0123456789", 8: "012345678", 0: "0"} {
		if got, err := Whole(name, most); err != nil || string(got) != want {
			t.Errorf("at most %d: %q, %v; want %q", most, got, err, want)
		}
	}
	if _, err := Whole(dir, 100); !errors.Is(err, ErrDirectory) {
		t.Errorf("a directory: %v", err)
	}
	_, err := Whole(filepath.Join(dir, "no"), 100)
	if !errors.Is(err, fs.ErrNotExist) || strings.Contains(err.Error(), dir) {
		t.Errorf("none there: %v", err)
	}
}
