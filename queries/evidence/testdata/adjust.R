# Makes adjust.json: which factors enter, and the rates and ratios adjusted for
# each other, on 200 random seasons with thin levels, levels without strikes,
# what is not logged and rows without hours. Run here: TZ=UTC Rscript adjust.R
# R 4.2.2: glm with family poisson. The sandwich by trips has the factor
# G/(G-1) (n-1)/(n-k), that of statsmodels' cov_type="cluster"; the gradient of a
# standardised rate is taken by differences.
source("../../stats/testdata/json.R")
set.seed(20040141)

# The rule, after its words: four fifths logged, two levels with enough effort
# (three strikes' worth, eight trips), ten strikes and three trips to each level.
prepare <- function(d, factors) {
  all_hours <- sum(d$t); strikes <- sum(d$x)
  budget <- min(strikes %/% 10, length(unique(d$trip)) %/% 3)
  entered <- character()
  for (f in factors) {
    l <- d[[f]]
    hours <- tapply(d$t, l, sum); trips <- tapply(d$trip, l, function(v) length(unique(v)))
    # without a strike nothing is enough to tell, and nothing is called thin by its hours
    thin <- setdiff(names(hours)[hours < (if (strikes > 0) 3 * all_hours / strikes else 0) | trips < 8], "not logged")
    l[l %in% thin] <- "other levels"
    d[[f]] <- l
    named <- setdiff(unique(l), c("not logged", "other levels"))
    dark <- l == "not logged"
    cost <- length(unique(l)) - 1
    if (sum(d$t[dark]) > .2 * all_hours || sum(d$x[dark]) > .2 * strikes || length(named) < 2 || strikes == 0 || cost > budget) next
    if (sum(d$x[l %in% named]) == 0) next
    budget <- budget - cost
    entered <- c(entered, f)
  }
  list(d = d, entered = entered)
}
reference <- function(d, f) {
  hours <- tapply(d$t, d[[f]], sum); x <- tapply(d$x, d[[f]], sum)
  ok <- setdiff(names(x)[x > 0], c("not logged", "other levels"))
  ok[order(-hours[ok], ok)][1]
}
adjusted <- function(d, factors) {
  d <- aggregate(d[c("t", "x")], d[c("trip", factors)], sum)
  d <- d[d$t > 0, ]
  p <- prepare(d, factors); d <- p$d
  out <- list(entered = as.list(p$entered), trips = length(unique(d$trip)), strikes = sum(d$x), phi = NaN, rows = list())
  if (!length(p$entered)) return(out)
  used <- d
  for (f in p$entered) used <- used[ave(used$x, used[[f]], FUN = sum) > 0, ]
  fits <- used
  for (f in p$entered) fits[[f]] <- relevel(factor(fits[[f]]), reference(d, f))
  if (any(sapply(p$entered, function(f) nlevels(fits[[f]]) < 2))) return(NULL)
  fit <- suppressWarnings(glm(reformulate(p$entered, "x"), poisson, fits, offset = log(t), control = list(epsilon = 1e-12, maxit = 100)))
  X <- model.matrix(fit); mu <- fitted(fit); b <- coef(fit)
  if (anyNA(b) || qr(X)$rank < ncol(X) || min(mu) < 1e-6) return(NULL) # see separation.json of package stats
  g <- length(unique(fits$trip)); n <- nrow(X); k <- ncol(X)
  bread <- solve(crossprod(X, mu * X))
  V <- g / (g - 1) * (n - 1) / (n - k) * bread %*% crossprod(rowsum(X * (fits$x - mu), fits$trip)) %*% bread
  q <- qt(.975, g - 1)
  out$phi <- sum((fits$x - mu)^2 / mu) / (n - k)
  for (f in p$entered) for (l in unique(d[[f]])) {
    here <- d[[f]] == l
    r <- list(factor = f, level = l, x = sum(d$x[here]), t = sum(d$t[here]), reference = as.numeric(l == reference(d, f)),
      rate = NaN, rlo = NaN, rhi = NaN, ratio = NaN, lo = NaN, hi = NaN, p = NaN)
    if (r$x > 0) {
      new <- fits; new[[f]] <- factor(l, levels(fits[[f]]))
      Z <- model.matrix(delete.response(terms(fit)), new)
      rate <- function(beta) sum(fits$t * exp(Z %*% beta)) / sum(fits$t)
      slope <- sapply(seq_len(k), function(j) { e <- replace(numeric(k), j, 1e-5); (log(rate(b + e)) - log(rate(b - e))) / 2e-5 })
      r$rate <- rate(b)
      well <- length(unique(d$trip[here])) >= 8
      if (well) { s <- sqrt(drop(slope %*% V %*% slope)); r$rlo <- r$rate * exp(-q * s); r$rhi <- r$rate * exp(q * s) }
      j <- match(paste0(f, l), names(b))
      if (well && !is.na(j)) {
        s <- sqrt(V[j, j]); r$ratio <- exp(b[[j]]); r$lo <- exp(b[[j]] - q * s); r$hi <- exp(b[[j]] + q * s)
        r$p <- 2 * pt(-abs(b[[j]]) / s, g - 1)
      }
    }
    out$rows <- c(out$rows, list(r))
  }
  out
}
season <- function(i) {
  trips <- sample(12:32, 1); n <- trips * 2
  d <- data.frame(trip = rep(seq_len(trips), each = 2))
  d$t <- if (i %% 6 == 0) rep(4, n) else round(runif(n, 1, 12), 1)
  pick <- function(k, dark) { l <- letters[sample.int(k, n, replace = TRUE, prob = rgamma(k, 1.2) + .02)]; l[runif(n) < dark] <- "not logged"; l }
  d$f1 <- pick(sample(2:4, 1), if (i %% 4 == 0) .12 else if (i %% 17 == 0) .3 else 0)
  d$f2 <- pick(sample(2:5, 1), if (i %% 5 == 0) .1 else 0)
  d$f3 <- pick(2, 0)
  luck <- rgamma(trips, 2, 2)[d$trip]
  quiet <- if (i %% 3 == 0) d$f1 != "b" else TRUE
  d$x <- rpois(n, c(.05, .25, .6, 2)[1 + (i %/% 3) %% 4] * luck * d$t * exp(.5 * (d$f1 == "a") - .3 * (d$f2 == "c")) * quiet)
  if (i %% 7 == 0) d$t[sample(n, 2)] <- 0
  d
}
cases <- lapply(1:200, function(i) {
  repeat { d <- season(i); r <- adjusted(d, c("f1", "f2", "f3")); if (!is.null(r)) break }
  letter <- function(l) paste(ifelse(l == "not logged", "-", l), collapse = "")
  list(trip = arr(d$trip), t = arr(d$t), x = arr(d$x), f1 = letter(d$f1), f2 = letter(d$f2), f3 = letter(d$f3), want = r)
})
fitted_sets <- sum(sapply(cases, function(v) length(v$want$rows) > 0))
stopifnot(fitted_sets >= 120)
cat(fitted_sets, "of the seasons have a factor that enters\n")
write_json(cases, "adjust.json")
