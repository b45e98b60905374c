# Makes counts.json: rates, shares, dispersion, two rates, several rates and
# Holm on 200 random data sets each. Run in this folder: TZ=UTC Rscript counts.R
# R 4.2.2, packages stats only.
source("json.R")
set.seed(19360437)
n <- 200
hours <- function(k, lo = .5, hi = 60) round(runif(k, lo, hi), 3)

rates <- lapply(1:n, function(i) {
  x <- rpois(1, rexp(1, 1 / 20)); t <- hours(1, .1, 300); conf <- sample(c(.8, .9, .95, .99), 1)
  ci <- poisson.test(x, t, conf.level = conf)$conf.int
  phi <- round(1 + rexp(1), 3); a <- (1 - conf) / 2
  list(x = x, effort = t, conf = conf, lo = ci[1], hi = ci[2], phi = phi,
    # effective counts x/phi in effort/phi, through the gamma quantile
    qlo = if (x == 0) 0 else qgamma(a, x / phi, rate = t / phi),
    qhi = qgamma(1 - a, x / phi + 1, rate = t / phi))
})
share <- lapply(1:n, function(i) {
  m <- sample(1:400, 1); r <- rbinom(1, m, runif(1)); conf <- sample(c(.8, .9, .95, .99), 1)
  w <- suppressWarnings(prop.test(r, m, correct = FALSE, conf.level = conf)$conf.int)
  b <- binom.test(r, m, conf.level = conf)$conf.int
  list(r = r, n = m, conf = conf, wlo = w[1], whi = w[2], lo = b[1], hi = b[2])
})
dispersion <- lapply(1:n, function(i) {
  trips <- sample(2:8, 1); levels <- sample(1:4, 1)
  d <- expand.grid(trip = 1:trips, level = 1:levels)
  d$t <- hours(nrow(d)); d$x <- rnbinom(nrow(d), size = 2, mu = .2 * d$t)
  d <- d[runif(nrow(d)) < .9 | d$trip <= 2, ]
  kept <- d[ave(d$x, d$level, FUN = sum) > 0, ]
  if (nrow(kept) == 0) { d$x[1] <- 3; kept <- d[d$level == d$level[1], ] }
  form <- if (length(unique(kept$level)) > 1) x ~ factor(level) else x ~ 1
  f <- glm(form, poisson, kept, offset = log(t), control = list(epsilon = 1e-13, maxit = 100))
  x2 <- sum(residuals(f, "pearson")^2)
  list(trip = arr(d$trip), level = arr(d$level), x = arr(d$x), t = arr(d$t), x2 = x2, df = f$df.residual,
    p = pchisq(x2, f$df.residual, lower.tail = FALSE))
})
two <- lapply(1:n, function(i) {
  t <- hours(2); x <- rpois(2, t * rexp(2, 4)); if (sum(x) == 0) x[1] <- 1
  conf <- sample(c(.9, .95, .99), 1)
  e <- poisson.test(x, t, conf.level = conf)
  p0 <- t[1] / sum(t); m <- sum(x)
  tail2 <- min(1, 2 * min(pbinom(x[1], m, p0), pbinom(x[1] - 1, m, p0, lower.tail = FALSE)))
  list(x = arr(x), t = arr(t), conf = conf, ratio = unname(e$estimate), lo = e$conf.int[1], hi = e$conf.int[2], p = tail2)
})
# every way to share m events out over k levels
outcomes <- function(m, k) if (k == 1) matrix(m) else
  do.call(rbind, lapply(0:m, function(x) cbind(x, outcomes(m - x, k - 1))))
exact_p <- function(x, p) {
  o <- outcomes(sum(x), length(x)); e <- sum(x) * p
  x2 <- apply(o, 1, function(v) sum((v - e)^2 / e))
  sum(apply(o, 1, dmultinom, prob = p)[x2 >= sum((x - e)^2 / e) * (1 - 1e-9) - 1e-12])
}
several <- lapply(1:n, function(i) {
  k <- sample(2:9, 1); t <- hours(k); x <- rpois(k, t * rgamma(k, 3, if (i %% 2) 30 else 5)); if (sum(x) == 0) x[1] <- 1
  e <- suppressWarnings(chisq.test(x, p = t / sum(t)))
  # -1: not computed, as no level expects fewer than 5 or the outcomes are many
  exact <- if (min(sum(x) * t / sum(t)) < 5 && choose(sum(x) + k - 1, k - 1) < 5000) exact_p(x, t / sum(t)) else -1
  list(x = arr(x), t = arr(t), x2 = unname(e$statistic), p = e$p.value, exact = exact)
})
holm <- lapply(1:n, function(i) {
  p <- signif(runif(sample(1:9, 1))^3, 4); if (runif(1) < .3) p[sample(length(p), 1)] <- NA
  list(p = arr(p), adjusted = arr(p.adjust(p, "holm")))
})
write_json(list(poisson = rates, share = share, dispersion = dispersion, two = two, several = several, holm = holm), "counts.json")
