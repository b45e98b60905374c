package pipeline

import "wakeledger/pipeline/sheet"

// Progress is how far the reading of a log has come.
type Progress struct {
	Log   string
	Rows  int64
	Bytes int64 // of cell text read: about the file's size at the end of a text file
	Done  bool
}

// every is how many rows are read between two reports of progress.
const every = 5000

// progress counts rows and reports now and then. The zero value reports to nobody.
type progress struct {
	now    Progress
	report func(Progress)
}

func (s *Season) newProgress(log string) *progress {
	return &progress{now: Progress{Log: log}, report: s.cfg.Progress}
}

func (p *progress) row(r *sheet.Row) {
	if p.report == nil {
		return
	}
	p.now.Rows++
	for _, c := range r.Cells {
		p.now.Bytes += int64(len(c)) + 1
	}
	if p.now.Rows%every == 0 {
		p.report(p.now)
	}
}

func (p *progress) end() {
	if p.report != nil {
		p.now.Done = true
		p.report(p.now)
	}
}
