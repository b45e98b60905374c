package bench

import (
	"fmt"
	"os"
	"os/exec"
	"syscall"
	"time"
)

// Cost is what a command took.
type Cost struct {
	Seconds float64
	PeakMiB float64 // resident, the pages of its own program included
}

// Run runs a command in a process of its own. For wakeledger the program that the
// environment's WAKELEDGER_BIN names is run, if it names one.
func Run(name string, args ...string) (Cost, error) {
	if bin := os.Getenv("WAKELEDGER_BIN"); bin != "" && name == "wakeledger" {
		name = bin
	}
	c := exec.Command(name, args...)
	began := time.Now()
	if out, err := c.CombinedOutput(); err != nil {
		return Cost{}, fmt.Errorf("%s: %w\n%s", name, err, out)
	}
	cost := Cost{Seconds: time.Since(began).Seconds()}
	if use, ok := c.ProcessState.SysUsage().(*syscall.Rusage); ok {
		cost.PeakMiB = float64(use.Maxrss) / 1024
	}
	return cost, nil
}

// Openpyxl reads all rows of a workbook's first sheet by openpyxl's read-only mode.
func Openpyxl(path string) (Cost, error) {
	interpreter := "python3"
	if exec.Command("/usr/bin/python3", "-c", "import openpyxl").Run() == nil {
		interpreter = "/usr/bin/python3" // Debian's, whose packages another in the path does not see
	}
	return Run(interpreter, "-c",
		"import openpyxl,sys\nn=0\nfor r in "+
			"openpyxl.load_workbook(sys.argv[1],read_only=True).worksheets[0].iter_rows(values_only=True): "+
			"n+=1\nassert n>1, n", path)
}
