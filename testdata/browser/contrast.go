package browser

// Contrast is JavaScript that lists texts of the page and of its charts whose contrast to the colour
// under them is below 4.5, or 3 where they are large (WCAG 2.2, 1.4.3).
const Contrast = `(() => {
	const rgb = c => (c.match(/[\d.]+/g) || []).map(Number);
	const light = c => { const [r, g, b] = rgb(c).slice(0, 3).map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
	const under = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor; if (rgb(c).length === 3 || rgb(c)[3] > 0) { return c; } } return "rgb(255, 255, 255)"; };
	const out = [];
	const look = (e, colour) => {
		const style = getComputedStyle(e), size = parseFloat(style.fontSize), a = light(colour), b = light(under(e));
		const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		const large = size >= 24 || size >= 18.66 && Number(style.fontWeight) >= 700;
		if (ratio < (large ? 3 : 4.5)) { out.push(e.tagName + " " + ratio.toFixed(2) + " " + e.textContent.slice(0, 30)); }
	};
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	while (walker.nextNode()) {
		const e = walker.currentNode.parentElement;
		if (walker.currentNode.textContent.trim() && e.getClientRects().length && !e.closest("svg, script, style")) { look(e, getComputedStyle(e).color); }
	}
	document.querySelectorAll(".chart svg text").forEach(e => { if (e.checkVisibility() && !e.getAttribute("stroke") || e.getAttribute("stroke") === "none") { look(e, getComputedStyle(e).fill); } });
	return out.slice(0, 10);
})()`
