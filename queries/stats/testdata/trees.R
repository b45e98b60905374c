# Makes trees.csv: R's trees, girth (in; a diameter, by its help page), height
# (ft), volume (cubic ft). Run in this folder: TZ=UTC Rscript trees.R
write.csv(trees, "trees.csv", row.names = FALSE, quote = FALSE)
