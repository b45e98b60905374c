// Package page is how a report looks: a model of a page, and its rendering as
// one self-contained HTML file that asks nothing of a network.
//
// A page is built in three steps, in this order:
//
//  1. The caller fills in a [Page]: tiles, sections, sentences, tables.
//  2. A chart of a section is made by one of the constructors ([Effort],
//     [Rates], [Shares], [Histograms], [Weights], [Outings], [Plot]). Each builds the
//     chart's options with go-echarts, validates them and keeps them as data.
//  3. [Render] writes the file: style, chart library, our script, and each
//     chart's options as a block of JSON.
//
// # Safety
//
// Text comes from other people's spreadsheets. html/template escapes it in
// the page and encoding/json escapes it in the data blocks; no text is ever
// run as a script. Where the options need a function (the custom marks), the
// JSON names one of a fixed table in assets/page.js. The page carries a
// content security policy that allows its own two scripts and its own style,
// by SHA-256, and nothing else: no request, no inline handler, no eval.
//
// go-echarts' own page template is not used: it loads scripts from a host,
// gives charts random identifiers and lets a label through unescaped.
//
// # Colour
//
// All colours are in palette.go: the set of Okabe and Ito (2008), and a
// ColorBrewer scale (Harrower and Brewer 2003) for what has an order. Colour is
// never the only sign: shape, hatching, position or words say the same.
//
// The package is a leaf: it knows no database and none of the questions.
package page
