# Makes ratio.json: same-trip ratios with trips as clusters on 200 random data
# sets, among them strata without strikes or with one side only, trips of one
# stratum, one trip alone and strikes on one side only.
# Run in this folder: TZ=UTC Rscript ratio.R
# R 4.2.2: glm; the sandwich is put together from its scores.
source("../../stats/testdata/json.R")
set.seed(19860013)

# The estimating function of the Mantel-Haenszel ratio at ln R, trip by trip
# (Liang and Zeger 1986, Biometrika 73:13-22).
scores <- function(theta, d) rowsum(d$y - exp(theta) * d$z, d$trip)
sandwich <- function(theta, d) {
  step <- 1e-4
  bread <- -(sum(scores(theta + step, d)) - sum(scores(theta - step, d))) / (2 * step)
  k <- length(unique(d$trip))
  k / (k - 1) * sum(scores(theta, d)^2) / bread^2
}
# The same from a regression: sum(y - R z) = 0 is the score of a log-linear model
# of y with offset log z, which takes a z above 0 in every trip.
by_glm <- function(d) {
  s <- as.data.frame(rowsum(d[c("y", "z")], d$trip))
  fit <- glm(y ~ 1, quasipoisson, s, offset = log(z), control = list(epsilon = 1e-12, maxit = 100))
  c(coef(fit), nrow(s) / (nrow(s) - 1) * sum(((s$y - fitted(fit)) / sum(fitted(fit)))^2))
}
ratio <- function(d) {
  d <- d[d$ta > 0 & d$tb > 0 & d$a + d$b > 0, ]
  out <- list(strata = nrow(d), trips = length(unique(d$trip)), est = NaN, se = NaN, lo = NaN, hi = NaN, p = NaN)
  if (nrow(d) == 0) return(out)
  w <- 1 / (d$ta + d$tb)
  d$y <- d$a * d$tb * w; d$z <- d$b * d$ta * w
  out$est <- sum(d$y) / sum(d$z)
  if (sum(d$y) == 0 || sum(d$z) == 0) return(out)
  theta <- log(out$est)
  # Greenland and Robins 1985, Biometrics 41:55-68
  own <- drop(crossprod(d$a + d$b, d$ta * d$tb * w^2)) / (sum(d$y) * sum(d$z))
  df <- Inf
  if (out$trips > 1) {
    df <- out$trips - 1
    v <- sandwich(theta, d)
    if (all(rowsum(d$z, d$trip) > 0)) { g <- by_glm(d); stopifnot(abs(g[1] - theta) < 1e-8, abs(g[2] / v - 1) < 1e-6); by_regression <<- by_regression + 1 }
    own <- max(own, v)
  }
  out$se <- sqrt(own)
  out$lo <- exp(theta - qt(.975, df) * out$se); out$hi <- exp(theta + qt(.975, df) * out$se)
  out$p <- 2 * pt(-abs(theta) / out$se, df)
  out
}
by_regression <- 0
cases <- lapply(1:200, function(i) {
  trips <- if (i %% 20 == 0) 1 else sample(2:20, 1)
  trip <- rep(seq_len(trips), if (i %% 3 == 0) 1 else sample(1:4, trips, replace = TRUE))
  n <- length(trip)
  hours <- function() { t <- if (i %% 6 == 0) rep(2, n) else round(runif(n, .3, 8), 2); t[runif(n) < .1] <- 0; t }
  d <- data.frame(trip, ta = hours(), tb = hours())
  luck <- rgamma(trips, 1, 1)[trip] * c(.05, .3, 1.5, 8)[1 + i %% 4]
  bite <- function() if (i %% 5 == 0) rgamma(n, .7, .7) else 1
  d$a <- rpois(n, d$ta * luck * bite() * if (i %% 25 == 0) 0 else exp(rnorm(1, 0, .6)))
  d$b <- rpois(n, d$tb * luck * bite() * if (i %% 33 == 0) 0 else 1)
  c(lapply(d, arr), ratio(d))
})
stopifnot(by_regression >= 50)
cat(by_regression, "of the sandwiches were checked by a regression\n")
write_json(cases, "ratio.json")
