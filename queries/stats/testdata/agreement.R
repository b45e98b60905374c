# Makes agreement.json: two measurements of the same things, on the raw and on
# the ratio scale, W = a L^b, and ratio coefficients judged by leaving one out,
# on 200 random data sets.
# R 4.2.2: t.test, lm, predict; epi.ccc of r-cran-epir 2.0.57, read out of the
# unpacked package as in strata.R:
#   TZ=UTC Rscript agreement.R FOLDER    FOLDER holds epiR/
source("json.R")
epi <- new.env(parent = globalenv())
invisible(capture.output(lazyLoad(file.path(commandArgs(TRUE)[1], "epiR", "R", "epiR"), epi)))
ccc <- epi$epi.ccc; environment(ccc) <- globalenv()
set.seed(19860307)
limits <- function(d, conf) {
  n <- length(d); s <- sd(d); q <- qt(1 - (1 - conf) / 2, n - 1)
  se <- s * sqrt(1 / n + 1.96^2 / (2 * (n - 1)))
  lo <- mean(d) - 1.96 * s; hi <- mean(d) + 1.96 * s
  c(mean(d), t.test(d, conf.level = conf)$conf.int, s, lo, hi, lo - q * se, lo + q * se, hi - q * se, hi + q * se,
    predict(lm(d ~ 1), data.frame(a = 1), interval = "prediction", level = conf)[2:3])
}
lin <- function(x, y, conf) {
  e <- ccc(x, y, conf.level = conf)
  c(unlist(e$rho.c), e$C.b)
}
cases <- lapply(1:200, function(i) {
  n <- sample(4:25, 1); conf <- sample(c(.8, .9, .95), 1)
  len <- round(runif(n, 80, 220), 1)
  y <- round(2e-5 * len^2.95 * exp(rnorm(n, 0, .12)), 2)
  x <- round(y * exp(rnorm(n, rnorm(1, 0, .1), .1)), 2)
  d <- x - y; trend <- summary(lm(d ~ I((x + y) / 2)))$coefficients[2, c(1, 4)]
  f <- lm(log(y) ~ log(len)); at <- round(runif(1, 60, 250), 1); nd <- data.frame(len = at)
  k <- function(j) list(exp(mean(log(y[j] / x[j]))), sum(y[j]) / sum(x[j]), mean(y[j] / x[j]))[[i %% 3 + 1]]
  left <- sapply(1:n, function(j) k(-j)) * x - y
  list(x = arr(x), y = arr(y), len = arr(len), conf = conf, limits = arr(limits(d, conf)),
    ratio = arr(limits(log(x / y), conf)), errors = arr(c(mean(abs(d)), sqrt(mean(d^2)), 100 * mean(d / y), 100 * mean(abs(d) / y))),
    trend = arr(trend), lin = arr(lin(x, y, conf)), loglin = arr(lin(log(x), log(y), conf)),
    line = arr(c(summary(f)$coefficients[, 1:2], summary(f)$sigma, summary(f)$r.squared)), at = at,
    pred = arr(exp(predict(f, nd, interval = "prediction", level = conf))),
    mid = arr(exp(predict(f, nd, interval = "confidence", level = conf))),
    k = k(1:n), left = arr(c(sqrt(mean(left^2)), mean(abs(left)), 100 * mean(abs(left) / y))))
})
write_json(cases, "agreement.json")
