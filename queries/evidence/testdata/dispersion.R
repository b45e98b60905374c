# Makes dispersion.json: the levels' dispersion and the dispersion within trips
# and within legs on 200 random seasons, sparse and dense, among them legs at one
# level only, trips without strikes, lines without hours, levels that no chain of
# shared legs joins and levels that only a long one does. Run in this folder: TZ=UTC Rscript dispersion.R
# R 4.2.2: glm with family poisson.
source("../../stats/testdata/json.R")
set.seed(19840033)
poisson_fit <- function(formula, d) suppressWarnings(glm(formula, poisson, d, offset = log(t), control = list(epsilon = 1e-10, maxit = 30)))
add_up <- function(d, by) aggregate(d[c("x", "t")], d[by], sum)

# A level's count has variance m + c m^2 in each cell (Breslow 1984, Applied
# Statistics 33:38-44). With H the derivative of the fitted counts by the
# observed ones, the residuals have covariance (I-H) V (I-H)', and c makes their
# sum of squares what is expected, the trace of that.
level_phi <- function(d) {
  d <- add_up(d[d$t > 0, ], c("trip", "level"))
  d <- d[ave(d$x, d$level, FUN = sum) > 0, ]
  fit <- poisson_fit(if (length(unique(d$level)) > 1) x ~ 0 + factor(level) else x ~ 1, d)
  X <- model.matrix(fit); m <- fitted(fit)
  H <- (m * X) %*% solve(crossprod(X, m * X), t(X))
  left <- diag(nrow(d)) - H
  expected <- function(v) sum(diag(left %*% diag(v, nrow(d)) %*% t(left)))
  over <- if (fit$df.residual > 0) max(0, (sum((d$x - m)^2) - expected(m)) / expected(m^2)) else 0
  pooled <- if (fit$df.residual > 0) sum(residuals(fit, "pearson")^2) / fit$df.residual else NaN
  phi <- tapply(m + over * m^2, d$level, sum) / tapply(m, d$level, sum)
  list(pooled = pooled, level = arr(as.numeric(names(phi))), phi = arr(pmax(phi, pooled, 1, na.rm = TRUE)))
}

# Pearson's X2 over its degrees of freedom with an effect of each stratum and
# level. Cells whose fitted counts run off to 0 carry nothing and are left out;
# the degrees of freedom are the cells' less the rank of the design.
within_phi <- function(d, by) {
  d$stratum <- do.call(paste, d[by])
  d <- add_up(d[d$t > 0, ], c("stratum", "level"))
  repeat {
    if (sum(d$x) == 0) return(NaN)
    X <- cbind(outer(d$stratum, unique(d$stratum), "=="), outer(d$level, unique(d$level), "==")) + 0
    apart <- qr(X)
    X <- X[, apart$pivot[seq_len(apart$rank)], drop = FALSE]
    fit <- poisson_fit(x ~ 0 + X, d)
    off <- d$x == 0 & fitted(fit) < 1e-7
    if (!any(off)) break
    d <- d[!off, ]
  }
  df <- nrow(d) - apart$rank
  if (df > 0) sum((d$x - fitted(fit))^2 / fitted(fit)) / df else NaN
}

season <- function(i) {
  trips <- sample(2:14, 1); levels <- if (i %% 9 == 0) 1 else sample(2:6, 1)
  chain <- i %% 13 == 0 # each leg has two neighbours of many levels, which a fit by turns is slow with
  if (chain) { trips <- 20; levels <- 10 }
  rate <- c(.03, .15, .8, 4)[1 + i %% 4]
  pull <- exp(rnorm(levels, 0, .6)); if (i %% 5 == 0 && levels > 1) pull[1] <- 0
  d <- do.call(rbind, lapply(1:trips, function(trip) {
    luck <- rgamma(1, 1.5, 1.5)
    use <- if (i %% 7 == 0) which(seq_len(levels) %% 2 == trip %% 2) else seq_len(levels) # two halves that no trip joins
    if (!length(use)) use <- 1
    do.call(rbind, lapply(1:sample(1:3, 1), function(leg) {
      level <- if (chain) sample.int(9, 1) + 0:1 else use[sample.int(length(use), sample(1:3, 1), replace = TRUE)]
      t <- if (i %% 6 == 0) rep(2, length(level)) else round(runif(length(level), .2, 6), 2)
      if (i %% 8 == 0) t[runif(length(t)) < .15] <- 0
      data.frame(trip = trip, leg = leg, level = level, t = t, x = rpois(length(t), rate * luck * pull[level] * t))
    }))
  }))
  # a level fished on one trip, with many strikes
  if (i %% 11 == 0) d <- rbind(d, data.frame(trip = 1, leg = 9, level = levels + 1, t = 5, x = 30))
  d
}
cases <- lapply(1:200, function(i) {
  repeat { d <- season(i); if (sum(d$x) > 0) break }
  c(lapply(d[c("trip", "leg", "level", "t", "x")], arr), list(level_phi = level_phi(d),
    within_trips = within_phi(d, "trip"), within_legs = within_phi(d, c("trip", "leg"))))
})
write_json(cases, "dispersion.json")
