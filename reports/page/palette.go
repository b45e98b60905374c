package page

import (
	"fmt"
	"strings"
)

// The set of Okabe and Ito (2008), "Color Universal Design", as RGB.
const (
	okabeOrange     = "#E69F00"
	okabeSky        = "#56B4E9"
	okabeGreen      = "#009E73"
	okabeBlue       = "#0072B2"
	okabeVermillion = "#D55E00"
)

// brewerYlGnBu is ColorBrewer's YlGnBu in six classes, light to dark (Harrower
// and Brewer 2003, The Cartographic Journal 40:27-37). Values from memory.
var brewerYlGnBu = [6]string{"#FFFFCC", "#C7E9B4", "#7FCDBB", "#41B6C4", "#2C7FB8", "#253494"}

// role is one use of a colour, in the light and in the dark scheme. Options of
// charts name roles as "@name"; the style sheet has them as --name.
type role struct{ name, light, dark string }

// roles are all colours of a page. Print uses the light column.
var roles = []role{
	{"paper", "#FFFFFF", "#12171D"},
	{"panel", "#F3F6F8", "#1B222A"},
	{"ink", "#16202A", "#E8EDF2"},
	{"soft", "#52606D", "#A9B5C1"},
	{"rule", "#D3DAE1", "#36414D"},
	{"accent", okabeBlue, okabeSky},
	{"rate", okabeSky, okabeBlue},
	{"effort", okabeGreen, okabeGreen},
	{"thin", "#E6EBEF", "#28323C"},
	{"hatch", "#9AA7B3", "#6C7A88"},
	{"hook", okabeBlue, okabeSky},
	{"boat", okabeVermillion, okabeOrange},
	{"scale", okabeBlue, okabeSky},
	{"tape", okabeVermillion, okabeOrange},
	{"boated", okabeBlue, okabeSky},
	{"earlier", okabeVermillion, okabeOrange},
	{"later", okabeBlue, okabeSky},
	{"struck", "#DCEBF5", "#22384A"},
	{"step0", brewerYlGnBu[0], brewerYlGnBu[5]},
	{"step1", brewerYlGnBu[1], brewerYlGnBu[4]},
	{"step2", brewerYlGnBu[2], brewerYlGnBu[3]},
	{"step3", brewerYlGnBu[3], brewerYlGnBu[2]},
	{"step4", brewerYlGnBu[4], brewerYlGnBu[1]},
	{"step5", brewerYlGnBu[5], brewerYlGnBu[0]},
}

// paletteData is the palette as the script reads it.
func paletteData() map[string]map[string]string {
	light, dark := map[string]string{}, map[string]string{}
	for _, r := range roles {
		light[r.name], dark[r.name] = r.light, r.dark
	}
	return map[string]map[string]string{"light": light, "dark": dark}
}

// paletteCSS is the palette as custom properties: the dark one on a screen
// that asks for it, the light one elsewhere, so that paper is never dark.
func paletteCSS() string {
	var light, dark strings.Builder
	for _, r := range roles {
		fmt.Fprintf(&light, "--%s:%s;", r.name, r.light)
		fmt.Fprintf(&dark, "--%s:%s;", r.name, r.dark)
	}
	return ":root{" + light.String() + "}\n@media screen and (prefers-color-scheme:dark){:root{" + dark.String() +
		"}}\n"
}
