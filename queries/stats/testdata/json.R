# Writes lists of numbers as JSON with 10 significant digits; NaN and infinite
# values become the strings "NaN", "Inf" and "-Inf". Sourced by the other scripts.
js <- function(x, scalar = length(x) == 1 && is.null(attr(x, "array"))) {
  if (is.list(x)) {
    if (is.null(names(x))) return(paste0("[", paste(sapply(x, js), collapse = ",\n"), "]"))
    return(paste0("{", paste0('"', names(x), '":', sapply(x, js), collapse = ","), "}"))
  }
  v <- if (is.character(x)) paste0('"', x, '"') else
    ifelse(is.finite(x), trimws(formatC(as.numeric(x), digits = 12, width = 1, format = "g")),
      ifelse(is.nan(x) | is.na(x), '"NaN"', ifelse(x > 0, '"Inf"', '"-Inf"')))
  if (scalar) v else paste0("[", paste(v, collapse = ","), "]")
}
arr <- function(x) { x <- unname(x); attr(x, "array") <- TRUE; x }
write_json <- function(x, file) writeLines(js(x), file)
