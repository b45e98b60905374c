(function () {
  "use strict";

  // Where the number of a dot stands, by number: dots near each other keep theirs apart.
  var BESIDE = [[0, -14], [13, -5], [9, 13], [-9, 13], [-13, -5]];
  // Below this width, in CSS pixels, a chart takes its narrow options.
  var NARROW = 560;
  // The width of a chart on paper: A4 or Letter within our margins.
  var PAPER = 680;
  // The height that a chart may have on paper: a sheet of Letter, less our margins
  // and the lines above the chart.
  var SHEET = 840;
  var TALL = 680;
  // Keys of chart options that hold a colour. Only under these is "@role"
  // replaced, so text from a log is never taken for one.
  var COLOUR_KEYS = { color: true, borderColor: true, backgroundColor: true };

  function json(id) { return JSON.parse(document.getElementById(id).textContent); }

  var palette = json("palette");

  function paint(node, pen) {
    if (node === null || typeof node !== "object") { return; }
    Object.keys(node).forEach(function (key) {
      var v = node[key];
      if (COLOUR_KEYS[key] === true && typeof v === "string" && v.charAt(0) === "@") {
        node[key] = pen[v.slice(1)];
      } else {
        paint(v, pen);
      }
    });
  }

  // ---- Marks. Each takes the palette and gives a renderItem of ECharts. ----

  function hatch(colour) {
    return { symbol: "rect", symbolSize: 1, color: colour, dashArrayX: [1, 0], dashArrayY: [1.2, 4], rotation: -Math.PI / 4 };
  }

  // Light or dark, whichever shows on the fill ("#RRGGBB"; relative luminance
  // as in WCAG 2, without its gamma: good enough to choose between two).
  function onto(fill) {
    var rgb = [1, 3, 5].map(function (i) { return parseInt(fill.slice(i, i + 2), 16) / 255; });
    var light = 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2] > 0.5;
    return light ? palette.light.ink : palette.light.paper;
  }

  function line(points, style, z) {
    return { type: "polyline", shape: { points: points }, z2: z, silent: true,
      style: Object.assign({ fill: null, lineWidth: 2 }, style) };
  }

  // An interval as a line with caps; an arrow where it leaves the axis.
  function whisker(lo, hi, y, right, style, cap) {
    var end = Math.min(hi, right), solid = Object.assign({}, style, { lineDash: null });
    var tip = hi > right + 0.5 ?
      [[right - cap, y - cap], [right, y], [right - cap, y + cap]] :
      [[end, y - cap], [end, y + cap]];
    return [
      line([[lo, y], [end, y]], style, 20),
      line([[lo, y - cap], [lo, y + cap]], solid, 20),
      line(tip, solid, 20)
    ];
  }

  var MARKS = {
    // [level, rate, lo, hi, effort as a share of the largest, thin]
    // The bar's length is the rate and its thickness the effort, so its area
    // is the count.
    rateBar: function (pen, inks) {
      return function (params, api) {
        var area = params.coordSys, right = area.x + area.width;
        var zero = api.coord([0, api.value(0)]), y = zero[1];
        var rate = api.value(1), lo = api.value(2), hi = api.value(3), thin = api.value(5) === 1;
        if (isNaN(rate)) { return null; }
        var thick = Math.max(4, api.size([0, 1])[1] * 0.8 * api.value(4));
        var x = Math.min(api.coord([rate, api.value(0)])[0], right);
        var bar = { type: "rect", z2: 10, silent: true,
          shape: { x: zero[0], y: y - thick / 2, width: Math.max(x - zero[0], 0), height: thick },
          style: thin ? { fill: pen.thin, stroke: pen.hatch, lineWidth: 1, lineDash: [3, 2], decal: hatch(pen.hatch) } : { fill: inks[api.value(0)] || pen.rate } };
        var children = [bar];
        if (!isNaN(lo) && !isNaN(hi)) {
          var style = { stroke: thin ? pen.soft : pen.ink, lineWidth: thin ? 1.5 : 2, lineDash: thin ? [4, 3] : null };
          children = children.concat(whisker(api.coord([lo, 0])[0], api.coord([hi, 0])[0], y, right, style, 5));
        }
        children.push({ type: "circle", z2: 30, silent: true, shape: { cx: x, cy: y, r: thin ? 3.5 : 4.5 },
          style: { fill: thin ? pen.paper : pen.ink, stroke: thin ? pen.soft : pen.paper, lineWidth: 1.5 } });
        return { type: "group", children: children };
      };
    },

    // [level, ratio, lo, hi, effort as a share of the largest, strength]
    // A bar from one to the ratio, as thick as the effort.
    ratioBar: function (pen, inks) {
      return function (params, api) {
        var area = params.coordSys, left = area.x, right = area.x + area.width;
        var ratio = api.value(1), lo = api.value(2), hi = api.value(3), strength = api.value(5);
        if (isNaN(ratio)) { return null; }
        var at = function (v) { return v > 0 ? Math.max(left, Math.min(right, api.coord([v, api.value(0)])[0])) : left; };
        var one = api.coord([1, api.value(0)]), y = one[1], x = at(ratio);
        var thick = Math.max(3, api.size([0, 1])[1] * 0.72 * api.value(4));
        var ink = inks[api.value(0)];
        var fill = strength === 0 ? pen.thin : ink || (strength === 2 ? pen.accent : pen.rate);
        var bar = { type: "rect", z2: 10, silent: true, shape: { x: Math.min(one[0], x), y: y - thick / 2, width: Math.abs(x - one[0]), height: thick },
          style: strength === 0 ? { fill: fill, stroke: pen.hatch, lineWidth: 1, lineDash: [3, 2], decal: hatch(pen.hatch) } : { fill: fill, opacity: ink && strength === 1 ? 0.5 : 1 } };
        var children = [bar], style = { stroke: strength === 0 ? pen.soft : pen.ink, lineWidth: strength === 0 ? 1.5 : 2, lineDash: strength === 0 ? [4, 3] : null };
        if (!isNaN(lo) && !isNaN(hi)) {
          var from = at(lo), over = hi > api.value(1) && api.coord([hi, 0])[0] > right + 0.5;
          children = children.concat(whisker(from, over ? right + 1 : at(hi), y, right, style, 5));
        }
        children.push({ type: "circle", z2: 30, silent: true, shape: { cx: x, cy: y, r: strength === 0 ? 3.5 : 4.5 },
          style: { fill: strength === 0 ? pen.paper : pen.ink, stroke: strength === 0 ? pen.soft : pen.paper, lineWidth: 1.5 } });
        return { type: "group", children: children };
      };
    },

    // [day, month, strikes, of them to the boat, line-hours, most strikes, most hours]
    // Strikes up from the row's line, hours down.
    dayBar: function (pen, inks) {
      return function (params, api) {
        var at = api.coord([api.value(0), api.value(1)]), size = api.size([1, 1]);
        var w = Math.max(4, Math.min(size[0] * 0.74, 20)), x = at[0] - w / 2, base = at[1] + size[1] * 0.16;
        var up = size[1] * 0.54 / api.value(5), down = size[1] * 0.28 / api.value(6);
        var n = api.value(2), boated = api.value(3), ink = inks[api.value(1)], dark = ink || pen.boated;
        var children = [{ type: "rect", z2: 10, silent: true, shape: { x: x, y: base + 1, width: w, height: Math.max(1.5, api.value(4) * down) }, style: { fill: pen.effort } },
          line([[x, base], [x + w, base]], { stroke: pen.ink, lineWidth: 1 }, 12)];
        if (n > boated) {
          children.push({ type: "rect", z2: 10, silent: true, shape: { x: x, y: base - n * up, width: w, height: (n - boated) * up },
            style: { fill: ink ? pen.paper : pen.struck, stroke: dark, lineWidth: 1 } });
        }
        if (boated > 0) {
          children.push({ type: "rect", z2: 11, silent: true, shape: { x: x, y: base - boated * up, width: w, height: boated * up }, style: { fill: dark, stroke: dark, lineWidth: 1 } });
        }
        if (size[0] > 15 && n > 0) {
          children.push({ type: "text", z2: 30, silent: true,
            style: { text: String(n), x: at[0], y: base - n * up - 1, align: "center", verticalAlign: "bottom", fill: pen.ink, fontSize: 11, fontFamily: pen.font } });
        }
        return { type: "group", children: children };
      };
    },

    // [weight, level, place across the row, of the species whose medians are drawn]
    sizeDot: function (pen, inks) {
      return function (params, api) {
        var at = api.coord([api.value(0), api.value(1)]), y = at[1] + api.value(2) * api.size([0, 1])[1] * 0.66, main = api.value(3) === 1, ink = inks[api.value(1)];
        return { type: "circle", z2: main ? 11 : 10, silent: true, shape: { cx: at[0], cy: y, r: main ? 3.5 : 3 },
          style: main ? { fill: ink || pen.rate, stroke: ink || pen.boated, lineWidth: 1 } : { fill: pen.paper, stroke: pen.soft, lineWidth: 1 } };
      };
    },

    // [median, level, lo, hi]
    sizeMedian: function (pen) {
      return function (params, api) {
        var area = params.coordSys, at = api.coord([api.value(0), api.value(1)]), half = api.size([0, 1])[1] * 0.36;
        return { type: "group", children: whisker(api.coord([api.value(2), api.value(1)])[0], api.coord([api.value(3), api.value(1)])[0], at[1], area.x + area.width, { stroke: pen.ink, lineWidth: 1.5 }, 4).concat([
          line([[at[0], at[1] - half], [at[0], at[1] + half]], { stroke: pen.paper, lineWidth: 6 }, 24),
          line([[at[0], at[1] - half], [at[0], at[1] + half]], { stroke: pen.ink, lineWidth: 3.5 }, 25)]) };
      };
    },

    // [level, from, to, kind, a whole season's]
    // Of two seasons the ink is the season's: solid to the boat, hatched lost, open the rest.
    fateBar: function (pen, inks) {
      return function (params, api) {
        var from = api.coord([api.value(1), api.value(0)]), to = api.coord([api.value(2), api.value(0)]);
        var h = api.size([0, 1])[1] * (api.value(4) === 1 ? 0.72 : 0.5), kind = api.value(3), ink = inks[api.value(0)];
        if (!(to[0] > from[0])) { return null; }
        if (ink) {
          return { type: "rect", z2: 10, silent: true, shape: { x: from[0], y: from[1] - h / 2, width: to[0] - from[0], height: h },
            style: { fill: kind === 0 ? ink : pen.paper, stroke: ink, lineWidth: 1, decal: kind === 1 || kind === 2 ? hatch(ink) : null } };
        }
        var style = [{ fill: pen.boated }, { fill: pen.boat }, { fill: pen.paper, stroke: pen.boat, lineWidth: 1, decal: hatch(pen.boat) },
          { fill: pen.struck, decal: hatch(pen.boated) }, { fill: pen.thin, decal: hatch(pen.hatch) }][kind];
        return { type: "rect", z2: 10, silent: true, shape: { x: from[0], y: from[1] - h / 2, width: to[0] - from[0], height: h },
          style: Object.assign({ stroke: kind === 3 ? pen.boated : kind === 4 ? pen.hatch : kind === 1 ? pen.boat : pen.boated, lineWidth: 1 }, style) };
      };
    },

    // [column, level, hours, strikes, hours as a share of the most, shade or -1, strikes in words, hours in words]
    pairCell: function (pen, inks) {
      return function (params, api) {
        var at = api.coord([api.value(0), api.value(1)]), size = api.size([1, 1]), step = api.value(5);
        var most = Math.min(size[0] * 0.9, size[1] - 38), side = most * Math.sqrt(api.value(4)), mid = at[1] - size[1] / 2 + 4 + most / 2;
        var none = !(api.value(2) > 0), children = [];
        if (!none) {
          var fill = step < 0 ? pen.thin : pen["step" + step];
          children.push({ type: "rect", z2: 10, silent: true, shape: { x: at[0] - side / 2, y: mid - side / 2, width: side, height: side },
            style: { fill: fill, stroke: step < 0 ? pen.hatch : inks[api.value(1)] || pen.ink, lineWidth: step >= 0 && inks.length ? 3 : 1, lineDash: step < 0 ? [3, 2] : null, decal: step < 0 ? hatch(pen.hatch) : null } });
        }
        children.push({ type: "text", z2: 30, silent: true,
          style: { text: size[0] < 64 ? (none ? "\u2013" : api.value(3) + "\n" + api.value(7)) : none ? "not fished" : api.value(6) + "\n" + api.value(7), x: at[0], y: at[1] + size[1] / 2 - 4, align: "center", verticalAlign: "bottom", fill: none || step < 0 ? pen.soft : pen.ink, fontSize: 11, lineHeight: 13, fontFamily: pen.font } });
        return { type: "group", children: children };
      };
    },

    // [weight, lo, hi, row, on a scale, doubtful]
    fishBar: function (pen, inks) {
      return function (params, api) {
        var area = params.coordSys, right = area.x + area.width, row = api.value(3), scale = api.value(4) === 1, doubt = api.value(5) === 1;
        var at = api.coord([api.value(0), row]), y = at[1], x = Math.min(at[0], right), h = api.size([0, 1])[1] * 0.34;
        var colour = inks[row] || (scale ? pen.scale : pen.tape);
        var children = [{ type: "rect", z2: 10, silent: true, shape: { x: area.x, y: y - h / 2, width: x - area.x, height: h },
          style: doubt ? { fill: pen.paper, stroke: pen.soft, lineWidth: 1, lineDash: [3, 2] } : scale ? { fill: colour } : { fill: pen.paper, stroke: colour, lineWidth: 1, decal: hatch(colour) } }];
        if (!isNaN(api.value(1)) && !isNaN(api.value(2))) {
          children = children.concat(whisker(api.coord([api.value(1), row])[0], api.coord([api.value(2), row])[0], y, right, { stroke: doubt ? pen.soft : pen.ink, lineWidth: 1.5 }, 4));
        }
        if (doubt) {
          children.push({ type: "text", z2: 40, silent: true, style: { text: "?", x: x - 6, y: y, align: "right", verticalAlign: "middle", fill: pen.ink, fontSize: 13, fontWeight: "bold", fontFamily: pen.font } });
        }
        return { type: "group", children: children };
      };
    },

    // [level, share, lo, hi, slot, slots, effort as a share of the largest, thin]
    shareMark: function (pen) {
      return function (params, api) {
        var area = params.coordSys, right = area.x + area.width;
        var level = api.value(0), share = api.value(1), slot = api.value(4), slots = api.value(5), thin = api.value(7) === 1;
        if (isNaN(share)) { return null; }
        var band = api.size([0, 1])[1] * 0.66;
        var at = api.coord([share, level]), y = at[1] + band * ((slot + 0.5) / slots - 0.5), x = at[0];
        var colour = slot === 0 ? pen.hook : pen.boat;
        var r = 3 + 4.5 * Math.sqrt(api.value(6));
        var children = whisker(api.coord([api.value(2), level])[0], api.coord([api.value(3), level])[0], y, right,
          { stroke: colour, lineWidth: thin ? 1.5 : 2, lineDash: thin ? [4, 3] : null }, 4);
        var style = { fill: thin ? pen.paper : colour, stroke: thin ? colour : pen.paper, lineWidth: 1.5 };
        if (slot === 0) {
          children.push({ type: "circle", z2: 30, silent: true, shape: { cx: x, cy: y, r: r }, style: style });
        } else {
          children.push({ type: "polygon", z2: 30, silent: true, style: style,
            shape: { points: [[x, y - r - 1.5], [x + r + 1.5, y], [x, y + r + 1.5], [x - r - 1.5, y]] } });
        }
        return { type: "group", children: children };
      };
    },

    // [class, level, count, of them solid, largest count, step of the scale or -1, thin]
    histBar: function (pen) {
      return function (params, api) {
        var at = api.coord([api.value(0), api.value(1)]), size = api.size([1, 1]);
        var n = api.value(2), solid = api.value(3), step = api.value(5);
        if (!(n > 0)) { return null; }
        var w = Math.min(size[0] * 0.78, 64), unit = size[1] * 0.62 / api.value(4);
        var x = at[0] - w / 2, foot = at[1] + size[1] / 2 - 1;
        var fill = step < 0 ? pen.thin : pen["step" + step];
        var children = [];
        if (n > solid) {
          children.push({ type: "rect", z2: 10, silent: true, shape: { x: x, y: foot - n * unit, width: w, height: (n - solid) * unit },
            style: { fill: fill, stroke: pen.ink, lineWidth: 1, decal: hatch(onto(fill)) } });
        }
        if (solid > 0) {
          children.push({ type: "rect", z2: 11, silent: true, shape: { x: x, y: foot - solid * unit, width: w, height: solid * unit },
            style: { fill: fill, stroke: pen.ink, lineWidth: 1 } });
        }
        children.push({ type: "text", z2: 30, silent: true,
          style: { text: String(n), x: at[0], y: foot - n * unit - 2, align: "center", verticalAlign: "bottom", fill: pen.ink, fontSize: 12, fontFamily: pen.font } });
        return { type: "group", children: children };
      };
    },

    // [x, y, filled, rank or 0]
    plotDot: function (pen) {
      return function (params, api) {
        var at = api.coord([api.value(0), api.value(1)]), full = api.value(2) === 1, rank = api.value(3);
        var children = [{ type: "circle", z2: 30, silent: true, shape: { cx: at[0], cy: at[1], r: full ? 5 : 4.5 },
          style: full ? { fill: pen.scale, stroke: pen.paper, lineWidth: 1 } : { fill: pen.paper, stroke: pen.scale, lineWidth: 2 } }];
        if (rank > 0) {
          var aside = BESIDE[(rank - 1) % BESIDE.length];
          children.push({ type: "text", z2: 40, silent: true,
            style: { text: String(rank), x: at[0] + aside[0], y: at[1] + aside[1], align: "center", verticalAlign: "middle", fill: pen.tape, stroke: pen.paper, lineWidth: 3, fontSize: 13, fontWeight: "bold", fontFamily: pen.font } });
        }
        return { type: "group", children: children };
      };
    },

    // [x1, y1, x2, y2, dashed, labelled, decimals of the label]
    plotLine: function (pen) {
      return function (params, api) {
        var from = api.coord([api.value(0), api.value(1)]), to = api.coord([api.value(2), api.value(3)]);
        var children = [line([from, to], { stroke: pen.ink, lineWidth: 1.5, lineDash: api.value(4) === 1 ? [6, 4] : null }, 20)];
        if (api.value(5) === 1) {
          var v = api.value(3), sign = v > 0 ? "+" : v < 0 ? "\u2212" : "";
          children.push({ type: "text", z2: 40, silent: true,
            style: { text: sign + Math.abs(v).toFixed(api.value(6)), x: to[0] + 4, y: to[1], align: "left", verticalAlign: "middle", fill: pen.ink, fontSize: 12, fontFamily: pen.font } });
        }
        return { type: "group", children: children };
      };
    },

    // [any, lo, hi]
    plotBand: function (pen) {
      return function (params, api) {
        var area = params.coordSys, top = api.coord([0, api.value(2)])[1], foot = api.coord([0, api.value(1)])[1];
        return { type: "rect", z2: 2, silent: true, shape: { x: area.x, y: top, width: area.width, height: foot - top }, style: { fill: pen.thin } };
      };
    }
  };

  // ECharts writes the font of a text, and the place of a drawing, as style
  // attributes, which the page's policy forbids; the same words through the
  // object model are allowed.
  SVGElement.prototype.setAttribute = function (name, value) {
    if (name === "style") {
      this.style.cssText = value;
    } else {
      Element.prototype.setAttribute.call(this, name, value);
    }
  };

  // ---- Charts ----

  var dark = window.matchMedia("(prefers-color-scheme: dark)");
  var figures = [];
  var printing = false;

  // A number of an axis as the page prints numbers: thousands apart, a true minus.
  function tickText(v) {
    var parts = String(Math.abs(v)).split(".");
    parts[0] = parts[0].replace(/\B(?=(\d{3})+$)/g, "\u202f");
    return (v < 0 ? "\u2212" : "") + parts.join(".");
  }

  function options(figure, width) {
    var spec = json(figure.host.dataset.options);
    var pen = printing || !dark.matches ? palette.light : palette.dark;
    var font = getComputedStyle(document.body).fontFamily;
    pen = Object.assign({ font: font }, pen);
    paint(spec, pen);
    var inks = (spec.inks || []).map(function (role) { return pen[role]; });
    spec.option.series.forEach(function (s) {
      if (typeof s.renderItem === "string") { s.renderItem = MARKS[s.renderItem](pen, inks); }
    });
    spec.option.textStyle = { fontFamily: font, color: pen.ink };
    // ECharts measures the labels of an axis without the common font: name it.
    spec.option.xAxis.concat(spec.option.yAxis).forEach(function (axis) {
      axis.axisLabel.fontFamily = font;
      if (axis.type === "value" && !axis.axisLabel.formatter) { axis.axisLabel.formatter = tickText; }
    });
    return { option: spec.option, narrow: width < NARROW ? spec.narrow : null, height: Number(figure.host.dataset.height), paper: spec.paper };
  }

  function draw(figure) {
    if (!figure.host.clientWidth || figure.host.closest("details:not([open])")) { return; } // folded
    var width = printing ? PAPER : figure.host.clientWidth;
    var o = options(figure, width);
    if (printing) { o.height = Math.min(o.paper, SHEET); }
    // One that leaves no room for the words above it may stand on the next sheet.
    figure.host.closest("section").classList.toggle("tall", printing && o.height > TALL);
    figure.host.style.height = o.height + "px";
    if (!figure.chart) {
      figure.chart = echarts.init(figure.host, null, { renderer: "svg", width: width, height: o.height });
    } else {
      figure.chart.resize({ width: width, height: o.height, animation: { duration: 0 } });
    }
    figure.chart.setOption(o.option, true);
    if (o.narrow) { figure.chart.setOption(o.narrow); }
    figure.width = width;
  }

  // What the first screen shows is drawn at once, the rest when it comes near, in the room
  // that is kept for each. What is folded comes near when it is opened.
  function drawInSight() {
    figures.forEach(function (f) { f.host.style.height = f.host.dataset.height + "px"; });
    var near = new IntersectionObserver(function (seen) {
      seen.filter(function (s) { return s.isIntersecting; }).forEach(function (s) {
        near.unobserve(s.target);
        draw(figures.find(function (f) { return f.host === s.target; }));
      });
    }, { rootMargin: "50% 0px" });
    var tops = figures.map(function (f) { return f.host.getBoundingClientRect().top; });
    figures.forEach(function (f, i) {
      if (tops[i] < window.innerHeight) { draw(f); }
      if (!f.chart) { near.observe(f.host); }
    });
    document.documentElement.dataset.drawn = "in sight";
  }

  function redraw() {
    figures.forEach(function (f) { if (f.chart) { draw(f); } });
  }

  function watchSize() {
    var asked = false;
    window.addEventListener("resize", function () {
      if (asked) { return; }
      asked = true;
      window.requestAnimationFrame(function () {
        asked = false;
        figures.forEach(function (f) { if (f.chart && f.host.clientWidth !== f.width && !printing) { draw(f); } });
      });
    });
  }

  // A link to what is folded opens it.
  function watchFolds() {
    window.addEventListener("hashchange", function () {
      var target = document.getElementById(location.hash.slice(1)), fold = target && target.closest("details");
      if (fold) { fold.open = true; target.scrollIntoView(); }
    });
  }

  // ---- Paper: charts in the light scheme at the width of a sheet; what is folded stays so ----

  function toPaper() {
    if (printing) { return; }
    printing = true;
    removeButtons();
    figures.forEach(draw);
  }

  function toScreen() {
    if (!printing) { return; }
    printing = false;
    addButtons();
    redraw();
  }

  // ---- Tables: a head sorts up, then down, then back to the order given ----

  function compare(a, b, numeric) {
    if (numeric) {
      if (a === "" || b === "") { return a === b ? 0 : a === "" ? 2 : -2; }
      return Math.sign(Number(a) - Number(b));
    }
    return Math.sign(a.localeCompare(b, document.documentElement.lang, { numeric: true }));
  }

  function sortBy(table, rows, column, direction) {
    var head = table.tHead.rows[0].cells[column], numeric = head.classList.contains("num");
    var keyed = rows.map(function (row, place) {
      var cell = row.cells[column];
      return { row: row, place: place, key: numeric ? cell.dataset.key || "" : cell.textContent };
    });
    if (direction !== 0) {
      keyed.sort(function (a, b) {
        var c = compare(a.key, b.key, numeric);
        // What is not known stays last both ways.
        if (Math.abs(c) === 2) { return c; }
        return c * direction || a.place - b.place;
      });
    }
    keyed.forEach(function (k) { table.tBodies[0].appendChild(k.row); });
  }

  function sortable(table) {
    var rows = Array.from(table.tBodies[0].rows);
    table.tHead.addEventListener("click", function (event) {
      if (!event.target.closest("button")) { return; }
      var head = event.target.closest("th"), was = head.getAttribute("aria-sort");
      var next = was === "ascending" ? "descending" : was === "descending" ? "" : "ascending";
      table.querySelectorAll("thead th").forEach(function (h) { h.removeAttribute("aria-sort"); });
      if (next) { head.setAttribute("aria-sort", next); }
      sortBy(table, rows, head.cellIndex, next === "ascending" ? 1 : next === "descending" ? -1 : 0);
    });
  }

  // ---- Tables as CSV (RFC 4180), as they stand sorted ----

  // A number as printed, without the marks of print; what is not known is empty.
  function plainNumber(text) {
    return text.replace(/\u202f/g, "").replace("\u2212", "-").replace(/ %$/, "").replace(/^\u2013$/, "");
  }

  // A text by which a spreadsheet would take the cell for a formula gets a ' (OWASP,
  // CSV Injection).
  function plainText(text) {
    return text === "\u2013" ? "" : /^'*[-=+@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(text) ? "'" + text : text;
  }

  function quoted(text) { return /[",\r\n]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text; }

  function csvOf(table) {
    var heads = Array.from(table.tHead.rows[0].cells);
    var body = Array.from(table.tBodies[0].rows).concat(table.tFoot ? Array.from(table.tFoot.rows) : []);
    var spans = heads.map(function (h, i) {
      return h.classList.contains("num") && body.some(function (r) { return r.cells[i].textContent.indexOf(" to ") > 0; });
    });
    function words(cell) { return cell.textContent.replace(/\s+/g, " ").trim(); }
    var lines = [heads.map(function (h, i) {
      var name = plainText(words(h));
      return spans[i] ? quoted(name + " from") + "," + quoted(name + " to") : quoted(name);
    })];
    body.forEach(function (row) {
      lines.push(Array.from(row.cells).map(function (cell, i) {
        if (!heads[i].classList.contains("num")) { return quoted(plainText(cell.textContent)); }
        var ends = plainNumber(cell.textContent).split(" to ");
        return spans[i] ? quoted(ends[0]) + "," + quoted(ends[1] || "") : quoted(ends[0]);
      }));
    });
    return lines.map(function (l) { return l.join(","); }).join("\r\n") + "\r\n";
  }

  // Where the clipboard is not given to a page from a file, the old way.
  function copyOld(text) {
    var area = document.createElement("textarea");
    area.value = text;
    document.body.append(area);
    area.select();
    var done = document.execCommand("copy");
    area.remove();
    return done ? Promise.resolve() : Promise.reject();
  }

  function copy(text) {
    if (!navigator.clipboard) { return copyOld(text); }
    return navigator.clipboard.writeText(text).catch(function () { return copyOld(text); });
  }

  function copyButton(table) {
    var button = document.createElement("button");
    button.type = "button";
    button.className = "copy";
    button.setAttribute("aria-live", "polite");
    button.textContent = "Copy as CSV";
    button.addEventListener("click", function () {
      copy(csvOf(table)).then(function () { button.textContent = "Copied"; }, function () { button.textContent = "Not copied: select the table instead"; });
    });
    table.closest(".scroll").before(button);
  }

  // Heads are buttons on a screen only: without this script they would be dead,
  // and a head that is repeated on the next sheet of paper loses its buttons.
  function addButtons() {
    document.querySelectorAll("thead th").forEach(function (th) {
      var button = document.createElement("button");
      button.type = "button";
      button.append.apply(button, Array.from(th.childNodes));
      th.append(button);
    });
    document.querySelectorAll("table").forEach(copyButton);
  }

  function removeButtons() {
    document.querySelectorAll("button.copy").forEach(function (b) { b.remove(); });
    document.querySelectorAll("thead button").forEach(function (b) { b.replaceWith.apply(b, Array.from(b.childNodes)); });
  }

  addButtons();
  document.querySelectorAll("table").forEach(sortable);
  if (typeof echarts !== "undefined") {
    figures = Array.from(document.querySelectorAll(".chart")).map(function (host) { return { host: host, chart: null, width: 0 }; });
    drawInSight();
    watchSize();
    watchFolds();
    dark.addEventListener("change", redraw);
  }
  window.addEventListener("beforeprint", toPaper);
  window.addEventListener("afterprint", toScreen);
  // Milliseconds from the opening of the page to its first screen.
  document.documentElement.dataset.took = String(Math.round(performance.now()));
})();
