# The power of a mixed model on the seasons that TestStudyPower writes:
#   go test ./queries/evidence -run TestStudyPower -study power -runs 100 -out DIR
#   Rscript testdata/power.R DIR
# A speed counts as found where its p-value after Holm over the levels, times the
# number of factors compared, is below 0.05 and it is the speed that is better.
# The report's own allowance is for 7 questions, as kin share (Find): the second figure.
# A fit whose standard error is not credible (below 0.05) is made again by other means; one that stays so is
# counted as broken, and finds nothing.
suppressPackageStartupMessages(library(lme4))
a <- commandArgs(TRUE); dir <- a[1]
for (trips in if (length(a) > 1) as.integer(a[2]) else c(12,30,60)) for (n in c(2,5)) {
  d <- read.csv(file.path(dir, sprintf("power-%d-%d.csv", trips, n)))
  bad <- 0; found <- 0; kin <- 0; lean <- 0; runs <- sort(unique(d$run))
  for (r in runs) {
    x <- d[d$run == r,]
    x <- aggregate(cbind(strikes,hours) ~ trip + leg + speed + start + better + factors, x, sum)
    h <- tapply(x$hours, x$speed, sum); ref <- names(h)[which.max(h)]
    x$speed <- relevel(factor(x$speed), ref)
    x$s <- sin(2*pi*x$start/24); x$c <- cos(2*pi*x$start/24)
    fit <- function(opt, q) suppressWarnings(suppressMessages(glmer(strikes ~ speed + s + c + (1|trip) + offset(log(hours)), x,
      family=poisson, nAGQ=q, control=glmerControl(optimizer=opt))))
    credible <- function(m) all(is.finite(sqrt(diag(as.matrix(vcov(m)))))) && summary(m)$coefficients[1,2] >= 0.05
    m <- fit("bobyqa", 1)
    if (!credible(m)) m <- fit("Nelder_Mead", 10)
    if (!credible(m)) m <- fit("bobyqa", 0)
    if (!credible(m)) { bad <- bad+1; next }
    k <- summary(m)$coefficients; k <- k[grep("^speed", rownames(k)),,drop=FALSE]
    p <- p.adjust(k[,4], "holm"); i <- which.min(k[,4])
    b <- sub("speed","",rownames(k)[i]); better <- if (k[i,1] > 0) b else ref
    ok <- better == as.character(x$better[1])
    if (ok && min(p) < .05) lean <- lean+1
    if (ok && min(p)*x$factors[1] < .05) found <- found+1
    if (ok && min(p)*7 < .05) kin <- kin+1
  }
  cat(sprintf("lme4 trips %d speeds %d: settled %.3f (by the report's allowance for kin %.3f), leaning or settled %.3f of %d, broken fits %d\n", trips, n, found/length(runs), kin/length(runs), lean/length(runs), length(runs), bad))
}
