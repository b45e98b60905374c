# Makes openfish.csv and openfish.json: the fish caught in Laengelmavesi in 1917
# (Brofeldt; JSE Data Archive), seven species, from the R package rrcov 1.7-2 (GPL-2 or
# later), data(fish); and R's lm of log weight on log length, pooled and by species.
# length_cm is from the nose to the notch of the tail (Length2). Two fish have no
# weight (one NA, one 0): they stay in the file. Made with R 4.2.2.
# Run in this folder, FOLDER the one with fish.rda: TZ=UTC Rscript openfish.R FOLDER
load(file.path(commandArgs(TRUE)[1], "fish.rda"))
out <- data.frame(species = fish$Species, length_cm = fish$Length2, weight_g = fish$Weight)
write.csv(out, "openfish.csv", row.names = FALSE, quote = FALSE)
d <- subset(out, !is.na(weight_g) & weight_g > 0)
one <- function(name, d) {
  m <- lm(log(weight_g) ~ log(length_cm), d); s <- summary(m)
  hits <- sapply(seq_len(nrow(d)), function(i) { # each fish from the others
    p <- exp(predict(lm(log(weight_g) ~ log(length_cm), d[-i, ]), d[i, ], interval = "prediction", level = .9))
    p[2] <= d$weight_g[i] && d$weight_g[i] <= p[3] })
  sprintf('{"species": "%s", "n": %d, "ln_a": %.14g, "b": %.14g, "ln_a_se": %.14g, "b_se": %.14g, "s": %.14g, "r2": %.14g, "held": %d}',
    name, nrow(d), coef(m)[1], coef(m)[2], s$coefficients[1, 2], s$coefficients[2, 2], s$sigma, s$r.squared, sum(hits))
}
rows <- c(one("all", d), sapply(sort(unique(d$species)), function(k) one(k, subset(d, species == k))))
writeLines(c("[", paste(rows, collapse = ",\n"), "]"), "openfish.json")
