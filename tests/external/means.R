# Clustered means, differences, regressions, shares and rates on public data sets of R, by clubSandwich and sandwich.
# Each answer carries its input, so that a test reads both from one place. Prints one JSON object.
suppressMessages({ library(clubSandwich); library(sandwich); library(MASS); library(nlme); library(jsonlite) })
out <- list()
again <- function(fit) { for (i in 1:3) fit <- update(fit, start = coef(fit)); fit }  # the last steps of Fisher scoring, past what the deviance can see
id <- function(x) as.integer(factor(as.character(x), levels = unique(as.character(x))))
satt <- function(fit, cluster, ...) {
  v <- vcovCR(fit, cluster = cluster, type = "CR2", ...)
  r <- conf_int(fit, vcov = v, test = "Satterthwaite")
  t <- coef_test(fit, vcov = v, test = "Satterthwaite")
  list(estimate = r$beta, se = r$SE, df = r$df, lower = r$CI_L, upper = r$CI_U, statistic = t$tstat, p = t$p_Satt)
}
meanOf <- function(y, cluster) c(list(values = y, patient = id(cluster)), satt(lm(y ~ 1), cluster))
chick <- as.data.frame(ChickWeight); ortho <- as.data.frame(Orthodont); co2 <- as.data.frame(CO2)
uneven <- subset(chick, Chick %in% c("18", "16", "15", "1"))          # 2, 7, 8 and 12 weighings
three <- subset(chick, Chick %in% c("18", "16", "1"))

# One mean
out[["mean-chick"]] <- meanOf(chick$weight, chick$Chick)
out[["mean-chick-uneven"]] <- meanOf(uneven$weight, uneven$Chick)
out[["mean-chick-three"]] <- meanOf(three$weight, three$Chick)
out[["mean-orthodont"]] <- meanOf(ortho$distance, ortho$Subject)
out[["mean-singletons-women"]] <- meanOf(women$weight, seq_along(women$weight))
t.out <- function(t) list(estimate = unname(t$estimate[1]), se = unname(t$stderr), df = unname(t$parameter), lower = t$conf.int[1], upper = t$conf.int[2])
out[["plain-mean-chick-uneven"]] <- c(list(values = uneven$weight, patient = id(uneven$Chick)), t.out(t.test(uneven$weight)))
m <- tapply(uneven$weight, id(uneven$Chick), mean)
out[["patient-mean-chick-uneven"]] <- c(list(values = uneven$weight, patient = id(uneven$Chick)), t.out(t.test(as.numeric(m))))

# Ratio of sums: weighted least squares through the origin with weights 1/x gives Σy/Σx; its CR variance with G/(G − 1) is the linearised one
ratioOf <- function(y, x, cluster) {
  keep <- x > 0; y <- y[keep]; x <- x[keep]; cluster <- cluster[keep]
  f <- lm(y ~ 0 + x, weights = 1 / x); G <- length(unique(cluster))
  se <- sqrt(vcovCL(f, cluster = cluster, type = "HC0", cadjust = TRUE)[1, 1])
  list(numerator = y, denominator = x, patient = id(cluster), estimate = unname(coef(f)), se = se, df = G - 1,
       lower = unname(coef(f)) - qt(.975, G - 1) * se, upper = unname(coef(f)) + qt(.975, G - 1) * se)
}
out[["ratio-epil"]] <- ratioOf(epil$y, epil$base, epil$subject)
out[["ratio-co2"]] <- ratioOf(co2$uptake, co2$conc, co2$Plant)
out[["ratio-chick"]] <- ratioOf(chick$weight, chick$Time, chick$Chick)

# Differences of two means, first minus second
differenceOf <- function(y, g, cluster) {
  f <- lm(y ~ 0 + factor(g, levels = rev(unique(g)))); first <- lm(y ~ I(as.integer(g == unique(g)[1])))
  r <- satt(first, cluster)
  c(list(values = y, group = as.character(g), patient = id(cluster)), lapply(r, function(x) x[2]))
}
out[["difference-sleep-shared"]] <- differenceOf(sleep$extra, as.character(sleep$group), sleep$ID)
out[["difference-orthodont"]] <- differenceOf(ortho$distance, as.character(ortho$Sex), ortho$Subject)
two <- subset(chick, Diet %in% c("1", "3")); out[["difference-chick"]] <- differenceOf(two$weight, as.character(two$Diet), two$Chick)
early <- transform(subset(chick, Chick %in% unique(chick$Chick)[1:14]), part = ifelse(Time < 10, "early", "late"))
early <- early[!(early$Chick == "3" & early$part == "late") & !(early$Chick == "7" & early$part == "early"), ]
out[["difference-chick-partly-shared"]] <- differenceOf(early$weight, early$part, early$Chick)
out[["difference-singletons-plants"]] <- differenceOf(PlantGrowth$weight[1:25], as.character(PlantGrowth$group[1:25] != "ctrl"), 1:25)

# Regression: coefficients in the order intercept, columns
regression <- function(fit, cluster, y, X, extra = list(), ...) c(list(values = as.numeric(y), design = unname(as.matrix(X)), patient = id(cluster)), extra, satt(fit, cluster, ...))
X <- model.matrix(~ age + Sex, ortho)[, -1]
out[["regression-orthodont"]] <- regression(lm(distance ~ age + Sex, ortho), ortho$Subject, ortho$distance, X)
X <- model.matrix(~ Time + Diet, chick)[, -1]
out[["regression-chick"]] <- regression(lm(weight ~ Time + Diet, chick), chick$Chick, chick$weight, X)
X <- model.matrix(~ Time * Diet, uneven)[, c("Time"), drop = FALSE]
out[["regression-chick-uneven"]] <- regression(lm(weight ~ Time, uneven), uneven$Chick, uneven$weight, X)
w <- 1 / (1 + chick$Time); X <- model.matrix(~ Time + Diet, chick)[, -1]
out[["regression-chick-weighted"]] <- regression(lm(weight ~ Time + Diet, chick, weights = w), chick$Chick, chick$weight, X, list(weights = w), inverse_var = TRUE)
tight <- glm.control(epsilon = 1e-15, maxit = 100)
X <- model.matrix(~ trt + I(week > 2), bacteria)[, -1]; storage.mode(X) <- "double"
fit <- again(glm((y == "y") ~ trt + I(week > 2), binomial, bacteria, control = tight))
out[["regression-bacteria-logit"]] <- regression(fit, bacteria$ID, bacteria$y == "y", X, list(link = "logit"))
fit <- again(glm(as.numeric(y == "y") ~ trt + I(week > 2), poisson, bacteria, control = tight))
out[["regression-bacteria-log"]] <- regression(fit, bacteria$ID, bacteria$y == "y", X, list(link = "log"))
X <- model.matrix(~ trt + lbase, epil)[, -1]; e <- rep(c(2, 1.5, 2, 2.5), 59)
fit <- again(glm(y ~ trt + lbase + offset(log(e)), poisson, epil, control = tight))
out[["regression-epil-rate"]] <- regression(fit, epil$subject, epil$y, X, list(link = "log", exposure = e))

# HTZ Wald: columns counted from 0 without the intercept
wald <- function(fit, cluster, y, X, columns, extra = list()) {
  v <- vcovCR(fit, cluster = cluster, type = "CR2")
  r <- Wald_test(fit, constraints = constrain_zero(columns + 2), vcov = v, test = "HTZ")
  c(list(values = as.numeric(y), design = unname(as.matrix(X)), patient = id(cluster), columns = I(columns)), extra,
    list(statistic = r$Fstat, df = r$df_num, dfDenominator = r$df_denom, p = r$p_val))
}
X <- model.matrix(~ Time + Diet, chick)[, -1]
out[["wald-chick-diet"]] <- wald(lm(weight ~ Time + Diet, chick), chick$Chick, chick$weight, X, 1:3)
X <- model.matrix(~ Diet, chick)[, -1]
out[["wald-chick-diet-alone"]] <- wald(lm(weight ~ Diet, chick), chick$Chick, chick$weight, X, 0:2)
X <- model.matrix(~ trt + I(week > 2), bacteria)[, -1]; storage.mode(X) <- "double"
fit <- again(glm((y == "y") ~ trt + I(week > 2), binomial, bacteria, control = tight))
out[["wald-bacteria-trt"]] <- wald(fit, bacteria$ID, bacteria$y == "y", X, 0:1, list(link = "logit"))
X <- model.matrix(~ age + Sex, ortho)[, -1]
out[["wald-orthodont-one"]] <- wald(lm(distance ~ age + Sex, ortho), ortho$Subject, ortho$distance, X, 1L)

# Shares of rows, clustered; the score interval at a fractional n by prop.test
score <- function(p, n) as.numeric(suppressWarnings(prop.test(p * n, n, correct = FALSE)$conf.int))
clusteredShare <- function(event, cluster) {
  n <- length(event); G <- length(unique(cluster)); p <- mean(event)
  v <- vcovCL(lm(event ~ 1), cluster = id(cluster), type = "HC0", cadjust = TRUE)[1, 1]
  deff <- v / (p * (1 - p) / n); e <- min(n, n / deff) * (qnorm(.975) / qt(.975, G - 1))^2; ci <- score(p, e)
  list(event = event, patient = id(cluster), estimate = p, deff = deff, nEffective = e, lower = ci[1], upper = ci[2])
}
absent <- as.numeric(bacteria$y == "n")
out[["share-bacteria"]] <- clusteredShare(absent, bacteria$ID)
small <- bacteria$ID %in% c("X01", "X02", "X03", "X05", "X07", "Y01"); out[["share-bacteria-six"]] <- clusteredShare(absent[small], bacteria$ID[small])
lens <- chick$weight > 100; out[["share-chick"]] <- clusteredShare(as.numeric(lens), chick$Chick)

# Medians of clustered values: Woodruff's interval, the quantiles at the score limits of the share up to the median
woodruff <- function(y, cluster) {
  q <- unname(quantile(y, .5)); e <- clusteredShare(as.numeric(y <= q), cluster)$nEffective; ci <- unname(quantile(y, score(.5, e)))
  list(values = y, patient = id(cluster), estimate = q, nEffective = e, lower = ci[1], upper = ci[2])
}
out[["woodruff-chick"]] <- woodruff(chick$weight, chick$Chick)
out[["woodruff-epil"]] <- woodruff(epil$y, epil$subject)
out[["woodruff-orthodont"]] <- woodruff(ortho$distance, ortho$Subject)

# Differences and ratios of shares
g <- ifelse(bacteria$trt == "placebo", "placebo", "drug"); late <- ifelse(bacteria$week > 2, "late", "early")
ratioFit <- function(y, g, cluster, e = NULL) {
  first <- as.numeric(g == unique(g)[1])
  d <- data.frame(y = y, first = first, o = if (is.null(e)) 0 else log(e))
  fit <- glm(y ~ first + offset(o), poisson, d, control = tight); for (i in 1:3) fit <- glm(y ~ first + offset(o), poisson, d, control = tight, start = coef(fit))
  r <- lapply(satt(fit, cluster), function(x) x[2])
  c(list(values = y, group = g, patient = id(cluster)), if (!is.null(e)) list(exposure = e),
    list(estimate = exp(r$estimate), seLog = r$se, df = r$df, lower = exp(r$lower), upper = exp(r$upper), statistic = r$statistic, p = r$p))
}
out[["risk-ratio-bacteria"]] <- ratioFit(absent, g, bacteria$ID)
out[["risk-ratio-bacteria-shared"]] <- ratioFit(absent, late, bacteria$ID)
out[["rate-ratio-epil"]] <- ratioFit(epil$y, as.character(epil$trt), epil$subject, e = rep(c(2, 1.5, 2, 2.5), 59))
out[["rate-ratio-epil-shared"]] <- ratioFit(epil$y, ifelse(epil$period == 4, "last", "before"), epil$subject, e = rep(2, 236))
out[["risk-difference-bacteria-shared"]] <- differenceOf(absent, late, bacteria$ID)
a <- clusteredShare(absent[g == "placebo"], bacteria$ID[g == "placebo"]); b <- clusteredShare(absent[g == "drug"], bacteria$ID[g == "drug"])
d <- a$estimate - b$estimate
out[["risk-difference-bacteria"]] <- list(values = absent, group = g, patient = id(bacteria$ID), estimate = d,
  lower = d - sqrt((a$estimate - a$lower)^2 + (b$upper - b$estimate)^2), upper = d + sqrt((a$upper - a$estimate)^2 + (b$estimate - b$lower)^2))

# Rates by patient: the intercept of a Poisson GLM with G/(G − 1) sandwich; exact ones by poisson.test
rateOf <- function(y, e, cluster) {
  fit <- glm(y ~ 1 + offset(log(e)), poisson, control = tight); fit <- glm(y ~ 1 + offset(log(e)), poisson, control = tight, start = coef(fit)); G <- length(unique(cluster))
  se <- sqrt(vcovCL(fit, cluster = cluster, type = "HC0", cadjust = TRUE)[1, 1]); r <- exp(unname(coef(fit)))
  sy <- tapply(y, id(cluster), sum); se_ <- tapply(e, id(cluster), sum)
  list(events = y, exposure = e, patient = id(cluster), estimate = r, seLog = se, df = G - 1, lower = r * exp(-qt(.975, G - 1) * se),
       upper = r * exp(qt(.975, G - 1) * se), dispersion = sum((sy - r * se_)^2 / (r * se_)) / (G - 1))
}
out[["rate-epil"]] <- rateOf(epil$y, rep(c(2, 1.5, 2, 2.5), 59), epil$subject)
six <- epil$subject %in% c(3, 17, 21, 30, 44, 58); out[["rate-epil-six"]] <- rateOf(epil$y[six], rep(2, sum(six)), epil$subject[six])
exact <- function(x, e) { t <- poisson.test(x, e); list(events1 = x[1], exposure1 = e[1], events2 = x[2], exposure2 = e[2], estimate = unname(t$estimate), lower = t$conf.int[1], upper = t$conf.int[2], p = t$p.value) }
out[["exact-ratio-a"]] <- exact(c(11, 6 + 8 + 7), c(800, 1083 + 1050 + 878))
out[["exact-ratio-b"]] <- exact(c(0, 7), c(10, 12)); out[["exact-ratio-c"]] <- exact(c(30, 11), c(4, 4)); out[["exact-ratio-d"]] <- exact(c(3, 9), c(1, 3))

# Tests of a difference by exchanging whole patients within equal numbers of rows, all arrangements, studentised by clubSandwich
exchange <- function(y, g, cluster) {
  cluster <- id(cluster); who <- seq_len(max(cluster)); side <- tapply(g == unique(g)[1], cluster, all); m <- as.integer(table(cluster))
  tOf <- function(side) { f <- lm(y ~ x, data.frame(y = y, x = as.numeric(side[cluster]))); abs(coef_test(f, vcov = "CR2", cluster = cluster)$tstat[2]) }
  per <- lapply(split(who, m), function(w) if (length(w) == 1) list(w[side[w]]) else combn(w, sum(side[w]), simplify = FALSE))
  all <- expand.grid(lapply(per, seq_along)); seen <- tOf(side)
  size <- apply(all, 1, function(k) { s <- rep(FALSE, length(who)); s[unlist(Map(function(p, i) p[[i]], per, k))] <- TRUE; tOf(s) })
  list(values = y, group = as.character(g), patient = cluster, statistic = seen, p = mean(size >= seen * (1 - 1e-9)), smallestP = mean(size >= max(size) * (1 - 1e-9)), arrangements = length(size))
}
keep <- ortho$Subject %in% c("M01", "M02", "M03", "M04", "M05", "F01", "F02", "F03", "F04")
out[["exchange-orthodont"]] <- exchange(ortho$distance[keep], as.character(ortho$Sex[keep]), ortho$Subject[keep])
kids <- subset(epil, subject %in% c(1:5, 29:33)); kids <- kids[!(kids$subject %in% c(1, 2, 3, 29, 30, 31) & kids$period == 4), ]
out[["exchange-epil-unlike"]] <- exchange(kids$y, as.character(kids$trt), kids$subject)
signs <- function(d) { m <- as.matrix(expand.grid(rep(list(c(-1, 1)), length(d)))); s <- abs(m %*% d); list(p = mean(s >= abs(sum(d)) * (1 - 1e-9)), smallestP = mean(s >= max(s) * (1 - 1e-9)), arrangements = nrow(m)) }
d <- sleep$extra[1:10] - sleep$extra[11:20]; tt <- t.test(d)
out[["signs-sleep"]] <- c(list(values = sleep$extra, group = as.character(sleep$group), patient = id(sleep$ID)), signs(d), list(statistic = unname(tt$statistic)))
darwin <- c(49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48)   # Darwin's pairs, eighths of an inch, as in Fisher 1935
out[["signs-darwin"]] <- c(list(differences = darwin), signs(darwin))

# All 5^5 resamples of five patients
five <- sleep$extra[1:5]; means <- rowMeans(expand.grid(rep(list(five), 5)))
out[["bootstrap-five"]] <- list(values = five, se = sqrt(mean((means - mean(means))^2)))

# Paired and Welch's t of patient means
out[["paired-sleep"]] <- c(list(values = sleep$extra, group = as.character(sleep$group), patient = id(sleep$ID)), t.out(tt), list(statistic = unname(tt$statistic), p = tt$p.value))
pm <- aggregate(distance ~ Subject + Sex, ortho, mean); w <- t.test(distance ~ Sex, pm)
out[["welch-orthodont"]] <- list(values = ortho$distance, group = as.character(ortho$Sex), patient = id(ortho$Subject), estimate = unname(w$estimate[1] - w$estimate[2]),
  se = w$stderr, df = unname(w$parameter), lower = w$conf.int[1], upper = w$conf.int[2], statistic = unname(w$statistic), p = w$p.value)

# Standardised differences, closed forms; smallest detectable difference by power.t.test; noncentral t
b <- birthwt; g <- ifelse(b$low == 1, "low", "not"); first <- g == unique(g)[1]
out[["smd-continuous"]] <- list(values = b$lwt, group = g, estimate = (mean(b$lwt[first]) - mean(b$lwt[!first])) / sqrt((var(b$lwt[first]) + var(b$lwt[!first])) / 2))
p1 <- mean(b$smoke[first]); p2 <- mean(b$smoke[!first])
out[["smd-binary"]] <- list(values = b$smoke, group = g, estimate = (p1 - p2) / sqrt((p1 * (1 - p1) + p2 * (1 - p2)) / 2))
s1 <- as.numeric(prop.table(table(factor(b$race)[first])))[-1]; s2 <- as.numeric(prop.table(table(factor(b$race)[!first])))[-1]
S <- (diag(s1) - s1 %o% s1 + diag(s2) - s2 %o% s2) / 2
out[["smd-levels"]] <- list(values = b$race, group = g, estimate = sqrt(mahalanobis(s1, s2, S)))
sdd <- function(n, sd, power, level = .05) list(se = sd * sqrt(2 / n), df = 2 * n - 2, power = power, confidence = 1 - level, estimate = power.t.test(n = n, sd = sd, power = power, sig.level = level, tol = 1e-14)$delta)
out[["sdd-20"]] <- sdd(20, 5, .8); out[["sdd-3"]] <- sdd(3, 1, .8); out[["sdd-100"]] <- sdd(100, 12, .95, .01); out[["sdd-2"]] <- sdd(2, 1, .9)
out[["grid-noncentral-t"]] <- { g <- expand.grid(t = c(.5, 2, 4.3), df = c(1.5, 4, 40), noncentrality = c(-1, 0, 1, 3.5, 9)); g$value <- pt(g$t, g$df, g$noncentrality, lower.tail = FALSE); as.list(g) }

# Distributions: far tails, fractional and huge degrees of freedom
grid <- function(.fun, ...) { g <- expand.grid(...); g$value <- do.call(.fun, unname(as.list(g))); as.list(g) }
out[["grid-lgamma"]] <- grid(function(x) lgamma(x), x = c(1e-8, .3, 1.5, 2.5, 10, 171.5, 1e5))
out[["grid-qt"]] <- grid(function(p, df) qt(p, df), p = c(1e-12, 1e-6, .01, .2, .4999, .7, .95, .999999), df = c(.7, 1, 2.5, 7.3, 30, 1e3, 1e6))
out[["grid-pt"]] <- grid(function(t, df) pt(t, df, lower.tail = FALSE), t = c(-3, -1e-4, 0, 1e-8, .5, 2, 8, 40), df = c(.7, 1, 2.5, 7.3, 30, 1e3, 1e6))
out[["grid-pf"]] <- grid(function(f, a, b) pf(f, a, b, lower.tail = FALSE), f = c(0, 1e-6, .5, 1, 4, 60, 1e4), d1 = c(1, 2, 5.5), d2 = c(1.2, 4, 17.3, 400))
out[["grid-qbeta"]] <- grid(function(p, a, b) qbeta(p, a, b), p = c(1e-6, .025, .5, .975), a = c(1, 8, 60.5), b = c(1, 3.3, 200))
out[["grid-qgamma"]] <- grid(function(p, s) qgamma(p, s), p = c(1e-8, .025, .5, .975, .999999), shape = c(.4, 1, 7.5, 300))
out[["grid-pnorm"]] <- grid(function(z) pnorm(z, lower.tail = FALSE), z = c(-20, -3, 0, 1e-10, 1.96, 8.3, 20, 37))
out[["grid-phyper"]] <- grid(function(k, m, n, d) phyper(k, m, n, d), k = c(0, 3, 7, 15), first = c(9, 40), second = c(6, 300), draws = c(5, 12))
out[["grid-phyper-upper"]] <- grid(function(k, m, n, d) phyper(k - 1, m, n, d, lower.tail = FALSE), k = c(0, 3, 5, 9), first = c(9, 40), second = c(6, 300), draws = c(5, 12))
out[["grid-pbinom-upper"]] <- grid(function(k, n, p) pbinom(k - 1, n, p, lower.tail = FALSE), k = c(0, 1, 4, 12), n = c(12, 200), p = c(1e-6, .03, .5, .9))
out[["grid-ppois-upper"]] <- grid(function(k, m) ppois(k - 1, m, lower.tail = FALSE), k = c(0, 1, 4, 30), mean = c(1e-6, .5, 8, 40))

cat(toJSON(out, digits = I(17), auto_unbox = TRUE))
