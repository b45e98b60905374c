# Makes strata.json: Mantel-Haenszel rate ratios (epi.2by2 of r-cran-epir
# 2.0.57, method "cohort.time": its IRR.mh.wald has the variance of Greenland
# and Robins 1985) and Marshall's shrinkage (EBest of r-cran-spdep 1.2-7, its
# posterior quantiles by qgamma), 200 random data sets each.
# Both packages need hundreds of others to be loaded, so their functions are
# read out of the unpacked package instead:
#   TZ=UTC Rscript strata.R FOLDER    FOLDER holds epiR/ and spdep/
source("json.R")
functions_of <- function(package) {
  e <- new.env(parent = globalenv())
  lazyLoad(file.path(commandArgs(TRUE)[1], package, "R", package), e)
  for (f in ls(e)) if (is.function(e[[f]])) { g <- e[[f]]; environment(g) <- e; assign(f, g, e) }
  e
}
invisible(capture.output(epi <- functions_of("epiR"), sp <- functions_of("spdep")))
set.seed(19850055)
n <- 200
hours <- function(k, lo = .5, hi = 60) round(runif(k, lo, hi), 3)
mh <- lapply(1:n, function(i) {
  repeat {
    k <- sample(2:8, 1); ta <- hours(k); tb <- hours(k); r <- rgamma(k, 2, 10)
    a <- rpois(k, ta * r * exp(rnorm(1))) ; b <- rpois(k, tb * r)
    if (sum(a) > 0 && sum(b) > 0) break
  }
  tab <- aperm(array(rbind(a, ta, b, tb), c(2, 2, k)), c(2, 1, 3))
  e <- unlist(suppressWarnings(epi$epi.2by2(tab, method = "cohort.time", units = 1))$massoc.detail$IRR.mh.wald)
  list(a = arr(a), ta = arr(ta), b = arr(b), tb = arr(tb), est = e[[1]], lo = e[[2]], hi = e[[3]])
})
eb <- lapply(1:n, function(i) {
  k <- sample(2:9, 1); t <- hours(k); x <- rpois(k, t * rgamma(k, 3, 10))
  e <- sp$EBest(x, t); a <- attr(e, "parameters")$a; b <- attr(e, "parameters")$b
  q <- function(p) if (a > 0) qgamma(p, b^2 / a + x, b / a + t) else rep(NaN, k)
  list(x = arr(x), t = arr(t), mean = b, variance = a, est = arr(e$estmm), lo = arr(q(.025)), hi = arr(q(.975)))
})
write_json(list(mh = mh, eb = eb), "strata.json")
