# Makes ranks.json: rank tests, quantiles and medians on 200 random data sets.
# Run in this folder: TZ=UTC Rscript ranks.R
# R 4.2.2: wilcox.test, median of outer(a, b, "-"), quantile type 7.
# The confidence levels are odd ones because at a tail that the exact law meets
# exactly, such as 1 in 20, R gives the next wider interval, which covers more.
source("json.R")
set.seed(19470050)
cases <- lapply(1:200, function(i) {
  m <- if (i %% 10 == 0) sample(50:60, 1) else sample(1:15, 1)
  n <- if (i %% 20 == 0) sample(50:60, 1) else sample(1:15, 1)
  tied <- i %% 2 == 1
  draw <- function(k) if (tied) round(rnorm(k, 70, 6)) else round(rnorm(k, 70, 6), 6)
  a <- draw(m) + sample(0:8, 1); b <- draw(n); conf <- sample(c(.81, .91, .951), 1)
  w <- suppressWarnings(wilcox.test(a, b))
  # the interval of the exact law alone: for the other R searches a root
  exact <- m < 50 && n < 50 && !anyDuplicated(c(a, b))
  ci <- c(NaN, NaN)
  if (exact && 2 / choose(m + n, m) <= 1 - conf)
    ci <- wilcox.test(a, b, conf.int = TRUE, conf.level = conf)$conf.int
  p <- round(runif(1), 3)
  # order statistics k and n+1-k, the highest k that still covers conf
  k <- suppressWarnings(max(which(1 - 2 * pbinom(seq_len(m %/% 2) - 1, m, .5) >= conf)))
  list(a = arr(a), b = arr(b), conf = conf, exact = as.numeric(exact), u = unname(w$statistic), p = w$p.value,
    shift = median(outer(a, b, "-")), lo = ci[1], hi = ci[2], at = p, q = quantile(a, p, type = 7, names = FALSE),
    median = median(a), mlo = if (is.finite(k)) sort(a)[k] else NaN, mhi = if (is.finite(k)) sort(a)[m + 1 - k] else NaN,
    cover = if (is.finite(k)) 1 - 2 * pbinom(k - 1, m, .5) else NaN)
})
write_json(cases, "ranks.json")
