# Answers of R on agreement, variance parts and penalised logistic regression, on public data sets; printed as one JSON object.
options(warn = -1)
suppressPackageStartupMessages({ library(jsonlite); library(nlme); library(clubSandwich) })
answers <- list()
say <- function(id, ...) answers[[id]] <<- lapply(list(...), function(v) if (length(v) > 1) I(unname(v)) else unname(v))

## Variance between and within, REML of the one-way random model ------------------------------
# Limits of agreement with their intervals: the REML information by whole matrices, ½ tr(P V_i P V_j), and the bias by clubSandwich.
limits <- function(y, who, parts) {
  Z <- model.matrix(~ 0 + factor(who)); same <- tcrossprod(Z); N <- length(y); one <- rep(1, N)
  W <- solve(parts[["between"]] * same + parts[["within"]] * diag(N)); P <- W - W %*% tcrossprod(one) %*% W / sum(W)
  with <- list(same, diag(N)); I <- outer(1:2, 1:2, Vectorize(function(i, j) sum(diag(P %*% with[[i]] %*% P %*% with[[j]])) / 2))
  total <- sum(parts); df <- 2 * total^2 / sum(solve(I))
  b <- conf_int(lm(y ~ 1), vcov = "CR2", cluster = factor(who)); z <- qnorm(.975); sd <- sqrt(total); se <- sqrt(b$SE^2 + z^2 * total / (2 * df))
  at <- b$beta + c(-1, 1) * z * sd; tq <- qt(.975, b$df)
  list(variance_df = df, limit_se = se, limit_lower_ci = at[1] + c(-1, 1) * tq * se, limit_upper_ci = at[2] + c(-1, 1) * tq * se)
}
parts <- function(id, y, who) {
  d <- data.frame(y = y, who = factor(who))
  ctl <- lmeControl(msTol = 1e-14, tolerance = 1e-14, msMaxIter = 500, niterEM = 100, opt = "optim", reltol = 1e-16)
  f <- lme(y ~ 1, random = ~1 | who, data = d, method = "REML", control = ctl)
  # lme stops some digits early; its likelihood is climbed to the top from there.
  n <- as.numeric(table(d$who)); m <- tapply(y, d$who, mean); inside <- sum((y - m[as.character(who)])^2); N <- length(y)
  slope <- function(l) { w <- n / (1 + l * n); mu <- sum(w * m) / sum(w); Q <- inside + sum(w * (m - mu)^2); sum(w) - sum(w^2) / sum(w) - (N - 1) * sum(w^2 * (m - mu)^2) / Q }
  v <- as.numeric(VarCorr(f)[, 1]); l0 <- v[1] / v[2]
  l <- uniroot(slope, c(l0 * .9, l0 * 1.1), tol = 1e-15, extendInt = "yes")$root
  w <- n / (1 + l * n); mu <- sum(w * m) / sum(w); within <- (inside + sum(w * (m - mu)^2)) / (N - 1)
  stopifnot(abs(within - v[2]) < 1e-4 * v[2], abs(l * within - v[1]) < 1e-3 * v[1])
  say(id, values = y, patient = as.character(who), between = l * within, within = within, lme_between = round(v[1], 5), lme_within = round(v[2], 5))
  answers[[id]] <<- c(answers[[id]], limits(y, who, c(between = l * within, within = within)))
}
o <- as.data.frame(Orthodont)
parts("reml-orthodont", o$distance, o$Subject)
some <- o[-c(2, 3, 4, 9, 17, 18, 30, 31, 32, 50, 77, 78, 101), ]
parts("reml-orthodont-uneven", some$distance, as.character(some$Subject))
r <- as.data.frame(Rail); parts("reml-rail", r$travel, as.character(r$Rail))

## Logistic regression with Firth's penalty ----------------------------------------------------
# The penalised likelihood is written down and climbed by optim, then finished by scoring; its top is checked from both sides.
penalised <- function(X, y, b) { p <- plogis(drop(X %*% b)); sum(y * log(p) + (1 - y) * log1p(-p)) + .5 * log(det(crossprod(X, p * (1 - p) * X))) }
firth <- function(X, y, held = NULL, at = 0) {
  free <- setdiff(seq_len(ncol(X)), held); b <- rep(0, ncol(X)); b[held] <- at
  pll <- function(v) { b[free] <- v; penalised(X, y, b) }
  b[free] <- optim(b[free], pll, method = "BFGS", control = list(fnscale = -1, reltol = 1e-16, maxit = 2000))$par
  for (k in 1:500) {
    p <- plogis(drop(X %*% b)); W <- p * (1 - p); I <- crossprod(X, W * X); h <- W * rowSums((X %*% solve(I)) * X)
    step <- solve(I[free, free], crossprod(X, y - p + h * (.5 - p))[free]); b[free] <- b[free] + step
    if (max(abs(step)) < 1e-13) break
  }
  for (j in free) stopifnot(pll(b[free]) >= pll(b[free] + 1e-4 * (free == j)), pll(b[free]) >= pll(b[free] - 1e-4 * (free == j)))
  list(b = b, pll = penalised(X, y, b), I = crossprod(X, (p <- plogis(drop(X %*% b))) * (1 - p) * X))
}
ask <- function(id, design, event) {
  X <- cbind(1, design); f <- firth(X, event); se <- sqrt(diag(solve(f$I))); drop <- qchisq(.95, 1) / 2
  limit <- function(j, d) {
    fall <- function(v) firth(X, event, j, v)$pll - f$pll + drop
    far <- 1; while (fall(f$b[j] + d * far * se[j]) > 0) far <- far * 1.3
    uniroot(fall, sort(f$b[j] + d * se[j] * c(0, far)), tol = 1e-13)$root
  }
  j <- seq_along(f$b); lr <- sapply(j, function(k) 2 * (f$pll - firth(X, event, k, 0)$pll))
  say(id, design = design, event = event, estimate = f$b, se = se, lower = sapply(j, limit, -1), upper = sapply(j, limit, 1), statistic = lr, p = pchisq(lr, 1, lower.tail = FALSE))
  answers[[id]]$design <<- unname(lapply(seq_len(nrow(design)), function(i) I(unname(design[i, ]))))
}
temp <- c(53, 57, 58, 63, 66, 67, 67, 67, 68, 69, 70, 70, 70, 70, 72, 73, 75, 75, 76, 76, 78, 79, 81)
fail <- c(1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0) # Dalal, Fowlkes, Hoadley 1989
ask("firth-oring", cbind(temp), fail)
ask("firth-oring-separated", cbind(cold = as.numeric(temp < 65)), fail) # below 65 degrees every flight failed
i <- infert[infert$stratum <= 20, ]; ask("firth-infert", cbind(i$induced, i$spontaneous), i$case)

## Weighted kappa: the two definitions, from the table ----------------------------------------
kappa <- function(id, t) {
  p <- t / sum(t); k <- nrow(t); apart <- abs(row(t) - col(t)) / (k - 1); chance <- outer(rowSums(p), colSums(p))
  say(id, unweighted = 1 - (1 - sum(diag(p))) / (1 - sum(diag(chance))), linear = 1 - sum(apart * p) / sum(apart * chance), quadratic = 1 - sum(apart^2 * p) / sum(apart^2 * chance))
  answers[[id]]$table <<- lapply(seq_len(k), function(i) I(unname(t[i, ])))
}
kappa("kappa-three", matrix(c(44, 5, 1, 7, 20, 3, 9, 5, 6), 3, byrow = TRUE))
kappa("kappa-four", matrix(c(10, 2, 0, 1, 3, 12, 4, 0, 0, 5, 9, 2, 0, 0, 3, 14), 4, byrow = TRUE))

cat(toJSON(answers, auto_unbox = TRUE, digits = NA, na = "null"))
