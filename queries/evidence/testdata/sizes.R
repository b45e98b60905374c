# Makes sizes.json: weights compared between levels on 200 random data sets with
# and without ties, of levels with no, few and 50 or more weights.
# Run in this folder: TZ=UTC Rscript sizes.R
# R 4.2.2: wilcox.test (exact below 50 without ties), p.adjust "holm", median,
# pbinom for the interval of order statistics.
source("../../stats/testdata/json.R")
set.seed(19630598)
median_interval <- function(v) {
  k <- which(1 - 2 * pbinom(seq_len(length(v) %/% 2) - 1, length(v), .5) >= .95)
  if (!length(k)) return(c(NaN, NaN))
  sort(v)[c(max(k), length(v) + 1 - max(k))]
}
cases <- lapply(1:200, function(i) {
  levels <- c(letters[1:sample(1:5, 1)], if (i %% 3 == 0) "not logged")
  n <- sample(0:16, length(levels), replace = TRUE)
  if (i %% 4 == 0) n[] <- sample(3:9, 1)
  if (i %% 12 == 0) n[1] <- 52
  w <- lapply(n, function(m) if (i %% 2) round(rlnorm(m, 3.4, .3)) else round(rlnorm(m, 3.4, .3), 5))
  can <- levels != "not logged" & n >= 4
  ref <- if (any(can)) which(can & n == max(n[can]))[1] else 0
  rows <- lapply(seq_along(levels), function(j) {
    ci <- median_interval(w[[j]])
    r <- list(median = if (n[j]) median(w[[j]]) else NaN, mlo = ci[1], mhi = ci[2], p = NaN, shift = NaN, exact = 0, lo = NaN, hi = NaN)
    if (can[j] && j != ref) {
      a <- w[[j]]; b <- w[[ref]]
      r$p <- suppressWarnings(wilcox.test(a, b))$p.value
      r$shift <- median(outer(a, b, "-"))
      if (n[j] < 50 && n[ref] < 50 && !anyDuplicated(c(a, b))) { # for the other R searches a root
        s <- wilcox.test(a, b, conf.int = TRUE)$conf.int
        r$exact <- 1; r$lo <- s[1]; r$hi <- s[2]
      }
    }
    r
  })
  holm <- p.adjust(sapply(rows, `[[`, "p"), "holm")
  for (j in seq_along(rows)) rows[[j]]$p <- if (is.na(holm[j])) NaN else holm[j]
  list(levels = arr(levels), weights = lapply(w, arr), reference = ref - 1, rows = rows)
})
write_json(cases, "sizes.json")
