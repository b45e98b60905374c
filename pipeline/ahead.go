package pipeline

import "wakeledger/pipeline/sheet"

// block is how many rows are handed over at once.
const block = 512

// ahead reads the rows of a sheet in a goroutine of its own, so that taking the
// file apart and understanding its cells overlap. Its rows are its own copies.
type ahead struct {
	rows   sheet.Rows
	blocks chan []sheet.Row
	free   chan []sheet.Row
	stop   chan struct{}
	done   chan struct{}
	now    []sheet.Row
	at     int
}

// readAhead takes over rows: its Close closes them.
func readAhead(rows sheet.Rows) *ahead {
	a := &ahead{rows: rows, blocks: make(chan []sheet.Row, 2), free: make(chan []sheet.Row, 4),
		stop: make(chan struct{}), done: make(chan struct{})}
	go a.fill()
	return a
}

func (a *ahead) fill() {
	defer close(a.done)
	defer close(a.blocks)
	for more := true; more; {
		var b []sheet.Row
		select {
		case b = <-a.free:
		default:
			b = make([]sheet.Row, 0, block)
		}
		for len(b) < block {
			if more = a.rows.Next(); !more {
				break
			}
			b = b[:len(b)+1] // the row that was here before lends its room
			b[len(b)-1].CopyOf(a.rows.Row())
		}
		select {
		case a.blocks <- b:
		case <-a.stop:
			return
		}
	}
}

func (a *ahead) Next() bool {
	if a.at++; a.at < len(a.now) {
		return true
	}
	if a.now != nil {
		select {
		case a.free <- a.now[:0]:
		default:
		}
	}
	a.now, a.at = <-a.blocks, 0
	return len(a.now) > 0
}

func (a *ahead) Row() *sheet.Row { return &a.now[a.at] }

// Err is the file's error; ask for it when Next has said that there is no more.
func (a *ahead) Err() error { return a.rows.Err() }

func (a *ahead) Close() error {
	close(a.stop)
	<-a.done
	return a.rows.Close()
}
