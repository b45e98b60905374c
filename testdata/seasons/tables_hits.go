package seasons

func (e expecting) strikes() Table {
	table := Table{Name: "strike"}
	for _, t := range e.s.Trips {
		for _, k := range t.Strikes {
			table.add(e.strike(t, k))
		}
	}
	return table
}

func (e expecting) strike(t *Trip, k *Strike) columns {
	c := e.where(t, k)
	c.add("outcome", word(k.Outcome))
	if k.Outcome == "" {
		c.add("hooked", nil)
	} else {
		c.add("hooked", k.hooked())
	}
	if e.f.Layout == "counts" {
		return c
	}
	c.addTime("strike_utc", k, e)
	c.add("species", text(code(k.Species)))
	c.add("species_logged", text(k.Species))
	c.add("loss_cause", text(k.Cause))
	c.add("fight_s", k.Fight.float("s"))
	c.add("angler", text(k.Angler))
	if !e.f.flat() {
		c.add("speed_kn", k.Speed.float("kn"))
	}
	return c
}

// where is a strike's natural key: trip, leg, line and instant.
func (e expecting) where(t *Trip, k *Strike) columns {
	var c columns
	c.add("boat", t.Boat)
	c.add("first_start", t.start())
	if k.Leg != nil {
		c.add("leg_start", k.Leg.Start)
	} else {
		c.add("leg_start", nil)
	}
	if k.Line != nil {
		c.add("line", k.Line.Name)
	} else {
		c.add("line", nil)
	}
	if e.f.Layout == "counts" {
		return c
	}
	if k.Timed {
		c.add("strike_at", k.At)
	} else {
		c.add("strike_at", nil)
	}
	return c
}

func (c *columns) addTime(name string, k *Strike, e expecting) {
	if k.Timed {
		c.add(name, e.utc(k.At))
		return
	}
	c.add(name, nil)
}

// fish has a row for every fish boated, measured or not. Its date is that of
// the instant where one is known, else its leg's, else its trip's.
func (e expecting) fish() Table {
	table := Table{Name: "fish"}
	for _, t := range e.s.Trips {
		for _, k := range t.Strikes {
			if k.boated() {
				table.add(e.oneFish(t, k))
			}
		}
	}
	return table
}

func (e expecting) oneFish(t *Trip, k *Strike) columns {
	c := e.where(t, k)
	day := midnight(t.start())
	switch {
	case k.Timed:
		day = midnight(k.At)
	case k.Leg != nil:
		day = midnight(k.Leg.Start)
	}
	f := k.Fish
	if f == nil {
		f = &Fish{}
	}
	c.add("date", day)
	c.add("species", text(code(k.Species)))
	c.add("species_logged", text(k.Species))
	c.add("length_cm", f.Length.float("cm"))
	c.add("length_kind", kinds[f.Kind])
	c.add("girth_cm", f.Girth.float("cm"))
	c.add("scale_kg", f.Weight.float("kg"))
	c.add("weight_state", states[f.State])
	c.add("certified", yes[f.Certified])
	c.add("kept", k.Outcome == Landed)
	c.add("angler", text(k.Angler))
	return c
}

var (
	kinds  = map[string]any{"fork length": "FL", "curved": "CFL"}
	states = map[string]any{"round": "round", "gilled and gutted": "gilled-gutted"}
	yes    = map[string]any{"yes": true, "no": false}
)

func code(name string) string {
	for _, s := range species {
		if s.name == name {
			return s.code
		}
	}
	return ""
}
