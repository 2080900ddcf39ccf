package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// limited runs the program under a limit of the shell.
func limited(t *testing.T, dir, limit string, args ...string) ended {
	t.Helper()
	c := exec.Command("sh", append([]string{"-c", "ulimit " + limit + ` && exec silowright "$@"`, "sh"}, args...)...)
	return finish(t, c, dir, nil)
}

// No file may grow past a size: the writing fails in the work directory's
// marker, in the first file, in a later one.
func TestFilesMayNotGrow(t *testing.T) {
	t.Parallel()
	dir, before := packed(t)
	for _, blocks := range []int{0, 1, 8, 64, 400} { // of 512 bytes
		limited(t, dir, fmt.Sprintf("-f %d", blocks), "pack").refused(t, "shop-pack: ")
		untouched(t, dir, before)
	}
	limited(t, dir, "-f 8", "start", "mine").refused(t, "mine: cannot be written: file too large; hint: nothing was changed")
	untouched(t, dir, before)
}

// Handles run out: refused, or done in full; nothing between.
func TestOutOfHandles(t *testing.T) {
	t.Parallel()
	dir, before := packed(t)
	var done, refused int
	for n := 5; n <= 23; n += 2 {
		e := limited(t, dir, fmt.Sprintf("-n %d", n), "pack", "--paper", "A0")
		if e.code == exitOK {
			done++
		} else {
			refused++
			e.refused(t, "too many open files")
		}
		untouched(t, dir, before)
	}
	if done == 0 || refused == 0 {
		t.Errorf("%d done, %d refused: the limit was not between them", done, refused)
	}
}

// What the command prints goes to a full disk.
func TestAnswerCannotBePrinted(t *testing.T) {
	t.Parallel()
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer full.Close()
	for _, args := range []string{"pack", "check", "cost", "water", "tables", "--help", "--version", "check --json"} {
		c := exec.Command("silowright", strings.Fields(args)...)
		c.Stdout = full
		finish(t, c, t.TempDir(), nil).refused(t, "the answer cannot be printed: no space left on device")
	}
}

// The disk is full: a small disk in memory that only a child sees, filled so
// that less and less of a pack fits.
func TestDiskFull(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	messages := t.TempDir() // on another disk
	script := `set -e
mount -t tmpfs -o size=4m none . && cd "$PWD" || { echo cannot mount; exit 0; }
state() { (cd d/shop-pack && find . -type f -exec sha256sum {} + | sort | sha256sum); ls -A d; }
mkdir d; (cd d && silowright pack --paper A0 >/dev/null)
state >"$MESSAGES/before"
for room in 0 4 8 60 200 400 600; do
	rm -f filler; free=$(df -k --output=avail . | tail -n 1)
	head -c $(( (free - room) * 1024 )) /dev/zero >filler
	code=0; (cd d && silowright pack) >/dev/null 2>"$MESSAGES/$room" || code=$?
	echo "room $room code $code"
	state | cmp - "$MESSAGES/before" && echo same
done
rm filler; (cd d && silowright pack >/dev/null) && ls -A d`
	c := exec.Command("sh", "-c", script)
	c.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
	}
	var out, errout strings.Builder
	c.Dir, c.Stdout, c.Stderr = dir, &out, &errout
	c.Env = append(os.Environ(), "MESSAGES="+messages)
	err := c.Run()
	if bad, ok := err.(*exec.ExitError); err != nil && !ok || strings.Contains(out.String(), "cannot mount") {
		t.Skipf("no disk may be mounted here: %v %s", err, errout.String())
	} else if ok {
		t.Fatalf("%v: %s%s", bad, out.String(), errout.String())
	}
	var want strings.Builder
	rooms := []string{"0", "4", "8", "60", "200", "400", "600"}
	for _, room := range rooms {
		fmt.Fprintf(&want, "room %s code 2\nsame\n", room)
		text, err := os.ReadFile(filepath.Join(messages, room))
		if err != nil {
			t.Fatal(err)
		}
		ended{exitBad, "", string(text)}.refused(t, "no space left on device")
	}
	want.WriteString("shop-pack\n")
	if diff := cmp.Diff(want.String(), out.String()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// The directory may not be written: as another user where this test is root.
func TestReadOnlyDirectory(t *testing.T) {
	t.Parallel()
	dir, before := packed(t)
	c := exec.Command("silowright", "pack")
	if os.Geteuid() == 0 {
		bin := filepath.Join(t.TempDir(), "silowright")
		copyProgram(t, bin)
		for _, d := range []string{filepath.Dir(filepath.Dir(bin)), filepath.Dir(bin), filepath.Dir(dir)} {
			if err := os.Chmod(d, 0o755); err != nil {
				t.Fatal(err)
			}
		}
		c = exec.Command(bin, "pack")
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 65534, Gid: 65534}} // nobody
	}
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(dir, 0o755) })
	finish(t, c, dir, nil).refused(t, "shop-pack: nothing can be written beside it: permission denied")
	untouched(t, dir, before)
}

// copyProgram copies this test program, which is the program by its name.
func copyProgram(t *testing.T, name string) {
	t.Helper()
	own, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	from, err := os.Open(own)
	if err != nil {
		t.Fatal(err)
	}
	defer from.Close()
	to, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o755)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(to, from); err != nil {
		t.Fatal(err)
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
}
