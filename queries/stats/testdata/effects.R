# Ten seasons of counts by trip and level. R's glm with an indicator a trip gives
# the reference: coefficients, their standard errors, and the deviance that each
# level's leaving out costs. The law of luck (gamma) has no fit in R's stats: its
# likelihood is written out and maximised; lme4's normal law stands beside it.
# Run: Rscript effects.R
suppressPackageStartupMessages(library(lme4))
source("json.R")
one <- function(seed) {
  set.seed(seed)
  trips <- 8 + 4 * seed; levels <- 2 + seed %% 4
  d <- do.call(rbind, lapply(seq_len(trips), function(t) {
    n <- sample(3:6, 1); data.frame(trip = t, level = sample(levels, n, TRUE) - 1, x = round(rnorm(n), 3), hours = round(10 + 30 * runif(n), 2)) }))
  luck <- rgamma(trips, 2, 2)
  d$strikes <- rpois(nrow(d), 0.04 * d$hours * luck[d$trip] * (1 + 0.4 * (d$level %% 2)) * exp(0.2 * d$x))
  keep <- ave(d$strikes, d$trip, FUN = sum) > 0
  w <- d[keep, ]
  # glm starts from rates like those of trips: tight tolerance
  fit <- function(d, ...) glm(strikes ~ ..., family = poisson)
  ctl <- glm.control(epsilon = 1e-14, maxit = 200)
  g <- glm(strikes ~ factor(level) + x + factor(trip), poisson, w, offset = log(hours), control = ctl)
  k <- grep("level|^x$", names(coef(g)))
  less <- sapply(seq_len(levels - 1), function(j) {
    w$keep <- factor(ifelse(w$level == j, 0, w$level))
    f <- if (levels == 2) strikes ~ x + factor(trip) else strikes ~ keep + x + factor(trip)
    deviance(glm(f, poisson, w, offset = log(hours), control = ctl)) - deviance(g) })
  X <- cbind(sapply(seq_len(levels - 1), function(j) d$level == j) * 1, d$x, 1); theta <- 2.5
  nll <- function(b) {
    m <- d$hours * exp(X %*% b); M <- tapply(m, d$trip, sum); Y <- tapply(d$strikes, d$trip, sum)
    -(sum(d$strikes * log(m)) - sum((Y + theta) * log(M + theta)) + sum(lgamma(Y + theta)) - trips * (lgamma(theta) - theta * log(theta))) }
  gr <- function(b) {
    m <- as.vector(d$hours * exp(X %*% b)); M <- tapply(m, d$trip, sum); Y <- tapply(d$strikes, d$trip, sum)
    f <- as.vector((Y + theta) / (M + theta))[d$trip]
    -colSums(X * (d$strikes - m * f)) }
  b <- c(rep(0, ncol(X) - 1), log(sum(d$strikes) / sum(d$hours)))
  for (i in 1:200) { H <- sapply(seq_along(b), function(j) { e <- b * 0; e[j] <- 1e-5; (gr(b + e) - gr(b - e)) / 2e-5 }); b <- b - solve(H, gr(b)) }
  mixed <- suppressMessages(suppressWarnings(glmer(strikes ~ factor(level) + x + (1 | trip), d, poisson, offset = log(hours), control = glmerControl(optimizer = "bobyqa"))))
  list(levels = levels, trip = d$trip - 1, level = d$level, x = d$x, hours = d$hours, strikes = d$strikes,
    beta = arr(coef(g)[k]), se = arr(sqrt(diag(vcov(g)))[k]), less = arr(less), luck = arr(b), theta = theta, mixed = arr(fixef(mixed)[-1]))
}
write_json(lapply(1:10, one), "effects.json")
