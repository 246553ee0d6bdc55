package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
)

// needs is what a job needs from the system: the names of Debian's packages,
// and how other systems are asked and told.
type needs struct {
	purpose string
	debian  []string
	// modules are known to pkg-config when the packages are there.
	modules []string
	// programs are found on the path when the packages are there.
	programs []string
	// elsewhere says what to install on a system other than Debian, by the
	// first word that its os-release, or GOOS, matches.
	elsewhere map[string]string
}

// windowNeeds is what building the window needs. The names for other systems
// are those of the Fyne project's own guide to installing it.
var windowNeeds = needs{
	purpose:  "build the window",
	debian:   []string{"gcc", "libc6-dev", "pkg-config", "libgl-dev", "libegl-dev", "xorg-dev", "libwayland-dev", "libxkbcommon-dev"},
	modules:  []string{"gl", "egl", "x11", "xcursor", "xrandr", "xinerama", "xi", "xxf86vm", "wayland-client", "xkbcommon"},
	programs: []string{"gcc"},
	elsewhere: map[string]string{
		"fedora":  "sudo dnf install gcc pkgconf libXcursor-devel libXrandr-devel mesa-libGL-devel mesa-libEGL-devel libXi-devel libXinerama-devel libXxf86vm-devel libxkbcommon-devel wayland-devel",
		"suse":    "sudo zypper install gcc pkg-config libXcursor-devel libXrandr-devel Mesa-libGL-devel Mesa-libEGL-devel libXi-devel libXinerama-devel libXxf86vm-devel libxkbcommon-devel wayland-devel",
		"arch":    "sudo pacman -S gcc pkgconf libglvnd xorg-server-devel libxcursor libxrandr libxinerama libxi libxxf86vm libxkbcommon wayland",
		"darwin":  "xcode-select --install",
		"windows": `install MSYS2, run "pacman -S mingw-w64-x86_64-toolchain" in its MinGW 64-bit shell and put its mingw64\bin folder on the PATH`,
	},
}

// viewingNeeds is what tests need that open the real window on a display of
// their own and look at it, and that watch whether a program opens a connection.
var viewingNeeds = needs{
	purpose:  "open, look at and watch the programs in tests",
	debian:   []string{"xvfb", "xdotool", "imagemagick", "strace"},
	programs: []string{"Xvfb", "xdotool", "convert", "strace"},
	elsewhere: map[string]string{
		"fedora": "sudo dnf install xorg-x11-server-Xvfb xdotool ImageMagick strace",
		"suse":   "sudo zypper install xorg-x11-server-Xvfb xdotool ImageMagick strace",
		"arch":   "sudo pacman -S xorg-server-xvfb xdotool imagemagick strace",
	},
}

// printingNeeds is what tests need that look at printed sheets and at drawings
// for a cutter.
var printingNeeds = needs{
	purpose:  "look at printed sheets in tests",
	debian:   []string{"poppler-utils", "librsvg2-bin"},
	programs: []string{"pdftoppm", "rsvg-convert"},
	elsewhere: map[string]string{
		"fedora": "sudo dnf install poppler-utils librsvg2-tools",
		"suse":   "sudo zypper install poppler-tools rsvg-convert",
		"arch":   "sudo pacman -S poppler librsvg",
	},
}

// present is the needs the repository has at its present state.
func (w workshop) present() []needs {
	if !w.windowed() {
		return nil
	}
	if runtime.GOOS != "linux" {
		return []needs{windowNeeds}
	}
	return []needs{windowNeeds, viewingNeeds, printingNeeds}
}

// provide installs what is missing of n on Debian and its kin; elsewhere it
// fails and says exactly what to install.
func (w workshop) provide(n needs) error {
	system := systemNames()
	if debianKin(system) {
		return w.installDebian(n)
	}
	missing := n.missing()
	if len(missing) == 0 {
		return nil
	}
	return fmt.Errorf("to %s, %s must be installed; %s", n.purpose, strings.Join(missing, ", "), n.advice(system))
}

func (w workshop) installDebian(n needs) error {
	var missing []string
	for _, name := range n.debian {
		if !installed(name) {
			missing = append(missing, name)
		}
	}
	if len(missing) == 0 {
		return nil
	}
	install := append([]string{"apt-get", "install", "--yes", "--no-install-recommends"}, missing...)
	lead, err := privilege()
	if err != nil {
		return fmt.Errorf("to %s, install what is missing as root: %s (%w)", n.purpose, strings.Join(install, " "), err)
	}
	w.say("To %s, these packages are installed: %s", n.purpose, strings.Join(missing, " "))
	for _, args := range [][]string{{"apt-get", "update"}, install} {
		args = append(append([]string{}, lead...), args...)
		if err := w.run(nil, args[0], args[1:]...); err != nil {
			return fmt.Errorf("install packages to %s: %w", n.purpose, err)
		}
	}
	return nil
}

// privilege is the words to put before a command that only root may run.
func privilege() ([]string, error) {
	quiet := []string{"env", "DEBIAN_FRONTEND=noninteractive"}
	if os.Geteuid() == 0 {
		return quiet, nil
	}
	if _, err := exec.LookPath("sudo"); err != nil {
		return nil, errors.New("this user is not root and there is no sudo")
	}
	return append([]string{"sudo"}, quiet...), nil
}

func installed(name string) bool {
	status, err := exec.Command("dpkg-query", "--show", "--showformat=${db:Status-Status}", name).Output()
	return err == nil && string(status) == "installed"
}

func (n needs) missing() []string {
	var out []string
	for _, p := range n.programs {
		if _, err := exec.LookPath(p); err != nil {
			out = append(out, p)
		}
	}
	if runtime.GOOS != "linux" {
		return out
	}
	for _, m := range n.modules {
		if exec.Command("pkg-config", "--exists", m).Run() != nil {
			out = append(out, "the headers of "+m)
		}
	}
	return out
}

func (n needs) advice(system []string) string {
	for _, name := range system {
		for known, what := range n.elsewhere {
			if strings.Contains(name, known) {
				return "on this system: " + what
			}
		}
	}
	return "the packages on Debian are " + strings.Join(n.debian, " ") + "; install their like"
}

func debianKin(system []string) bool {
	for _, name := range system {
		if name == "debian" || name == "ubuntu" {
			return true
		}
	}
	return false
}

// systemNames is what the system calls itself and what it says it is like.
func systemNames() []string {
	if runtime.GOOS != "linux" {
		return []string{runtime.GOOS}
	}
	text, err := os.ReadFile("/etc/os-release")
	if err != nil {
		return []string{runtime.GOOS}
	}
	return osRelease(string(text))
}

// osRelease is the words of ID and ID_LIKE of an os-release file.
func osRelease(text string) []string {
	var names []string
	for line := range strings.Lines(text) {
		key, value, _ := strings.Cut(strings.TrimSpace(line), "=")
		if key == "ID" || key == "ID_LIKE" {
			names = append(names, strings.Fields(strings.Trim(value, `"'`))...)
		}
	}
	return names
}
