# Makes scale_check.json from scale_fish.csv, in which only what was read off tape and
# scale is used: length, girth, round weight, species, length kind, and a and b of the
# published relation. scale_fish.csv is the answer of `wakeledger ask scale-fish
# --format csv` on the demo season (testdata/demo/logs, --ocean pacific); the estimates
# in it are not read. Made with R 4.2.2; run in this folder: TZ=UTC Rscript scale_check.R
d <- read.csv("scale_fish.csv", stringsAsFactors = FALSE)
common <- 0.45359237 / (800 * 2.54^3)
L <- d$length_cm; G <- d$girth_cm; W <- d$round_kg
girth <- common * L * G^2
alone <- d$relation_a * L^d$relation_b
own <- rep(NA, nrow(d))
fit <- function(r) { # the geometric mean, shrunk towards the common constant
  s <- if (length(r) > 1) sd(r) else 0
  diff <- mean(r) - log(common)
  share <- if (s > 0) max(0, 1 - s^2 / length(r) / diff^2) else 1
  common * exp(share * diff)
}
key <- paste(d$species, ifelse(d$length_kind == "", "FL", d$length_kind))
ok <- !is.na(L) & !is.na(G) & !is.na(W) & d$species != ""
for (k in unique(key[ok])) {
  at <- which(ok & key == k)
  if (length(at) < 5) next
  r <- log(W[at] / (L[at] * G[at]^2))
  for (j in seq_along(at)) own[at[j]] <- fit(r[-j]) * L[at[j]] * G[at[j]]^2
}
lin <- function(x, y) { # Lin 1989, divisor n; interval by Fisher's z, 2000
  n <- length(x); mx <- mean(x); my <- mean(y)
  sxx <- mean((x - mx)^2); syy <- mean((y - my)^2); sxy <- mean((x - mx) * (y - my))
  p <- 2 * sxy / (sxx + syy + (mx - my)^2); r <- sxy / sqrt(sxx * syy); u <- (mx - my) / (sxx * syy)^.25
  v <- (1 - r^2) * p^2 * (1 - p^2) / r^2 + 2 * p^3 * (1 - p) * u^2 / r - p^4 * u^4 / (2 * r^2)
  se <- sqrt(v / (n - 2)) / (1 - p^2)
  c(p, tanh(atanh(p) + c(-1, 1) * qnorm(.975) * se))
}
check <- function(method, est, which) {
  use <- which & !is.na(est) & !is.na(W); x <- est[use]; y <- W[use]; e <- x - y; n <- length(e)
  s <- sd(e); t <- qt(.975, n - 1); b <- mean(e); lim <- b + c(-1, 1) * 1.96 * s
  se <- s * sqrt(1 / n + 1.96^2 / (2 * (n - 1))); l <- log(x / y); cc <- lin(x, y)
  ll <- mean(l) + c(-1, 1) * 1.96 * sd(l)
  fit <- summary(lm(e ~ I((x + y) / 2)))$coefficients
  v <- c(n = n, bias_kg = b, bias_pct = mean(100 * e / y), mae_kg = mean(abs(e)), mape_pct = mean(100 * abs(e) / y),
    rmse_kg = sqrt(mean(e^2)), loa_lo_kg = lim[1], loa_hi_kg = lim[2], concordance = cc[1],
    bias_lo_kg = b - t * s / sqrt(n), bias_hi_kg = b + t * s / sqrt(n),
    loa_lo_lo_kg = lim[1] - t * se, loa_lo_hi_kg = lim[1] + t * se, loa_hi_lo_kg = lim[2] - t * se, loa_hi_hi_kg = lim[2] + t * se,
    concordance_lo = cc[2], concordance_hi = cc[3],
    ratio = exp(mean(l)), ratio_lo = exp(mean(l) - t * sd(l) / sqrt(n)), ratio_hi = exp(mean(l) + t * sd(l) / sqrt(n)),
    loa_ratio_lo = exp(ll[1]), loa_ratio_hi = exp(ll[2]), median_abs_kg = median(abs(e)), sd_kg = s, trend = fit[2, 1], trend_p = fit[2, 4])
  stopifnot(n >= 30) # with fewer, the limits are the prediction interval of one more fish
  sprintf('{"method": "%s", "loa_form": "1.96 standard deviations", %s}', method, paste(sprintf('"%s": %.12g', names(v), v), collapse = ", "))
}
all <- rep(TRUE, nrow(d)); same <- !is.na(own) & !is.na(girth) & !is.na(alone)
sets <- list(list("", all), list(", fish that all three weigh", same))
rows <- unlist(lapply(sets, function(s) c(check(paste0("own coefficient", s[[1]]), own, s[[2]]),
  check(paste0("length and girth", s[[1]]), girth, s[[2]]), check(paste0("length", s[[1]]), alone, s[[2]]))))
writeLines(c("[", paste(rows, collapse = ",\n"), "]"), "scale_check.json")
