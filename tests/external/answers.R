# Answers of R to the checks of stat-checks.json, by the id of the check; printed as one JSON object.
# The questions (data) are read from that file; nothing of our own code is run here.
options(warn = -1)
suppressPackageStartupMessages({ library(jsonlite); library(survival) })
checks <- fromJSON("stat-checks.json", simplifyVector = FALSE)
names(checks) <- sapply(checks, `[[`, "id")
flat <- function(x) if (is.list(x) && length(x) && all(lengths(x) <= 1) && is.null(names(x))) unlist(lapply(x, function(v) if (is.null(v)) NA else v)) else if (is.list(x)) lapply(x, flat) else x
input <- function(id) {
  own <- flat(checks[[id]]$input)
  if (!is.null(own$data_ref)) own <- c(own, input(own$data_ref)[setdiff(names(input(own$data_ref)), names(own))])
  own
}
answers <- list()
say <- function(id, ...) answers[[id]] <<- lapply(list(...), function(v) if (length(v) > 1) I(unname(v)) else unname(v))
say_list <- function(id, fields) do.call(say, c(id, fields))
ids <- function(prefix) grep(paste0("^", prefix), names(checks), value = TRUE)
z975 <- qnorm(.975)
columns <- function(i) as.data.frame(i$columns)

## Shares -----------------------------------------------------------------------
score <- function(x, n, level = .95) prop.test(x, n, correct = FALSE, conf.level = level)$conf.int
for (id in c(ids("prop-wilson-[0-9]+-[0-9]+"), ids("prop-clopper"))) {
  i <- input(id); if (length(i$confidence) > 1) next
  ci <- if (grepl("clopper", id)) binom.test(i$x, i$n)$conf.int else score(i$x, i$n)
  say(id, lower = ci[1], upper = ci[2])
}
i <- input("prop-wilson-90-99"); ci <- sapply(i$confidence, function(l) score(i$x, i$n, l)); say("prop-wilson-90-99", lower = ci[1, ], upper = ci[2, ])
i <- input("prop-grid-wilson"); ci <- mapply(score, i$x, i$n); say("prop-grid-wilson", lower = ci[1, ], upper = ci[2, ])
i <- input("prop-grid-clopper-pearson"); ci <- mapply(function(x, n) binom.test(x, n)$conf.int, i$x, i$n); say("prop-grid-clopper-pearson", lower = ci[1, ], upper = ci[2, ])
for (id in ids("propdiff-newcombe10")) {
  i <- input(id); a <- score(i$x1, i$n1); b <- score(i$x2, i$n2); p <- i$x1 / i$n1; q <- i$x2 / i$n2
  say(id, difference = p - q, lower = p - q - sqrt((p - a[1])^2 + (b[2] - q)^2), upper = p - q + sqrt((a[2] - p)^2 + (q - b[1])^2))
}

## Counts and rates ---------------------------------------------------------------
i <- input("poisson-exact-count"); ci <- sapply(i$count, function(x) poisson.test(x)$conf.int); say("poisson-exact-count", lower = ci[1, ], upper = ci[2, ])
rate <- function(x, exposure, per = 1) { ci <- poisson.test(x, exposure)$conf.int * per; list(rate = per * x / exposure, lower = ci[1], upper = ci[2]) }
i <- input("poisson-rate-per-cm"); say_list("poisson-rate-per-cm", rate(i$events, i$exposure_cm))
i <- input("poisson-rate-per-100-segments"); say_list("poisson-rate-per-100-segments", rate(i$events, i$segments, i$per))
i <- input("poisson-rate-zero-events"); say_list("poisson-rate-zero-events", rate(i$events, i$exposure_cm))
i <- input("rate-ratio-exact"); r <- poisson.test(c(i$events1, i$events2), c(i$exposure1, i$exposure2)); lr <- log(r$estimate); se <- sqrt(1 / i$events1 + 1 / i$events2)
m <- epitools::rateratio(c(i$events2, i$events1), c(i$exposure2, i$exposure1), method = "midp")$measure[2, ]
say("rate-ratio-exact", rate_ratio = r$estimate, exact_lower = r$conf.int[1], exact_upper = r$conf.int[2], exact_p_two_sided = r$p.value, wald_lower = exp(lr - z975 * se), wald_upper = exp(lr + z975 * se), wald_z = lr / se, midp_lower = m[2], midp_upper = m[3])
tight <- glm.control(epsilon = 1e-14, maxit = 100)
i <- input("poisson-regression-offset"); f <- glm(i$events ~ i$x + offset(log(i$exposure)), poisson, control = tight)
say("poisson-regression-offset", coef = coef(f), se = summary(f)$coefficients[, 2], rate_ratio = exp(coef(f)[2]), deviance = f$deviance, pearson_dispersion = sum(residuals(f, "pearson")^2) / f$df.residual)

## Tables -----------------------------------------------------------------------
rows <- function(i) do.call(rbind, if (is.null(i$table)) i$table_rows else i$table)
# fisher.test stops its search for the odds ratio and its limits after four digits; the same equations are solved to the end.
odds <- function(t2) {
  x <- t2[1, 1]; k <- max(0, sum(t2[, 1]) - sum(t2[2, ])):min(sum(t2[1, ]), sum(t2[, 1])); d <- dhyper(k, sum(t2[1, ]), sum(t2[2, ]), sum(t2[, 1]))
  at <- function(l) { w <- log(d) + k * l; w <- exp(w - max(w)); w / sum(w) }
  where <- function(f) exp(uniroot(f, c(-20, 20), tol = 1e-14)$root)
  list(mle = if (x == min(k)) 0 else where(function(l) sum(at(l) * k) - x), lower = if (x == min(k)) 0 else where(function(l) sum(at(l)[k >= x]) - .025), upper = where(function(l) sum(at(l)[k <= x]) - .025))
}
t2 <- rows(input("fisher-tea")); f <- fisher.test(t2); o <- odds(t2)
say("fisher-tea", p_two_sided = f$p.value, p_greater = fisher.test(t2, alternative = "greater")$p.value, conditional_mle_or = o$mle, or_lower = o$lower, or_upper = o$upper)
t2 <- rows(input("fisher-convictions")); say("fisher-convictions", p_two_sided = fisher.test(t2)$p.value, p_less = fisher.test(t2, alternative = "less")$p.value)
for (id in c("fisher-rxc-job", "fisher-rxc-2x3-zero")) say(id, p = fisher.test(rows(input(id)))$p.value)
t3 <- rows(input("fisher-rxc-3x3")); x <- chisq.test(t3); say("fisher-rxc-3x3", p = fisher.test(t3)$p.value, chisq = x$statistic, chisq_df = x$parameter, chisq_p = x$p.value, min_expected = min(x$expected))
t2 <- rows(input("fisher-zero-cell")); f <- fisher.test(t2); say("fisher-zero-cell", p_two_sided = f$p.value, or_estimate = f$estimate, or_upper = odds(t2)$upper)
for (id in ids("chisq-2x2")) { t2 <- rows(input(id)); x <- chisq.test(t2, correct = FALSE); y <- chisq.test(t2); say(id, chisq_uncorrected = x$statistic, p_uncorrected = x$p.value, chisq_yates = y$statistic, p_yates = y$p.value, df = x$parameter) }
t3 <- rows(input("chisq-rxc-agresti")); x <- chisq.test(t3); say("chisq-rxc-agresti", chisq = x$statistic, df = x$parameter, p = x$p.value, cramers_v = sqrt(x$statistic / sum(t3) / (min(dim(t3)) - 1)))
i <- input("cochran-armitage-agresti"); x <- prop.trend.test(i$events, i$totals, i$scores); N <- sum(i$totals)
say("cochran-armitage-agresti", chisq_cochran_armitage = x$statistic, z = sqrt(x$statistic), p = x$p.value, M2_mantel_N_minus_1 = x$statistic * (N - 1) / N, M = sqrt(x$statistic * (N - 1) / N))
i <- input("cochran-armitage-smokers"); x <- prop.trend.test(i$events, i$totals, i$scores); say("cochran-armitage-smokers", chisq = x$statistic, p = x$p.value, heterogeneity_chisq_df3 = prop.test(i$events, i$totals)$statistic)

## Means and ranks ----------------------------------------------------------------
i <- input("t-two-sample-nist-auto"); v1 <- i$sd1^2 / i$n1; v2 <- i$sd2^2 / i$n2; d <- i$mean1 - i$mean2; df <- (v1 + v2)^2 / (v1^2 / (i$n1 - 1) + v2^2 / (i$n2 - 1)); sp <- sqrt(((i$n1 - 1) * i$sd1^2 + (i$n2 - 1) * i$sd2^2) / (i$n1 + i$n2 - 2)); tw <- d / sqrt(v1 + v2)
say("t-two-sample-nist-auto", pooled_sd = sp, t_pooled = d / (sp * sqrt(1 / i$n1 + 1 / i$n2)), df_pooled = i$n1 + i$n2 - 2, t_welch = tw, df_welch = df, p_welch = 2 * pt(-abs(tw), df), ci_welch_lower = d - qt(.975, df) * sqrt(v1 + v2), ci_welch_upper = d + qt(.975, df) * sqrt(v1 + v2))
i <- input("t-darwin"); p <- t.test(i$a, i$b, paired = TRUE); w <- t.test(i$a, i$b); s <- t.test(i$a, i$b, var.equal = TRUE)
say("t-darwin", paired_t = p$statistic, paired_df = p$parameter, paired_p = p$p.value, paired_mean_diff = p$estimate, paired_ci_lower = p$conf.int[1], paired_ci_upper = p$conf.int[2], welch_t = w$statistic, welch_df = w$parameter, welch_p = w$p.value, welch_ci_lower = w$conf.int[1], welch_ci_upper = w$conf.int[2], pooled_t = s$statistic, pooled_p = s$p.value)
i <- input("t-welch-fixture"); w <- t.test(i$a, i$b); o <- t.test(i$a)
say("t-welch-fixture", t = w$statistic, df = w$parameter, p = w$p.value, mean_diff = mean(i$a) - mean(i$b), ci_lower = w$conf.int[1], ci_upper = w$conf.int[2], mean_a = mean(i$a), sd_a = sd(i$a), mean_a_ci_lower = o$conf.int[1], mean_a_ci_upper = o$conf.int[2])
i <- input("mann-whitney-exact-hollander"); w <- wilcox.test(i$x, i$y, exact = TRUE, conf.int = TRUE)
say("mann-whitney-exact-hollander", W_first_sample = w$statistic, p_one_sided_greater = wilcox.test(i$x, i$y, alternative = "g", exact = TRUE)$p.value, p_two_sided = w$p.value, hodges_lehmann_shift = w$estimate, ci_lower = w$conf.int[1], ci_upper = w$conf.int[2])
i <- input("mann-whitney-ties"); r <- rank(c(i$x, i$y)); m <- length(i$x); all_sums <- combn(length(r), m, function(k) sum(r[k])); e <- m * mean(r); n <- length(r)
variance <- m * (n - m) / n * sum((r - mean(r))^2) / (n - 1)
p <- mean(abs(all_sums - e) >= abs(sum(r[1:m]) - e) - 1e-9)
say("mann-whitney-ties", U = wilcox.test(i$x, i$y, exact = FALSE)$statistic, p_normal_cc = wilcox.test(i$x, i$y, exact = FALSE)$p.value, p_normal_nocc = wilcox.test(i$x, i$y, exact = FALSE, correct = FALSE)$p.value, z_nocc = (sum(r[1:m]) - e) / sqrt(variance), p_exact_permutation = p, p_exact_coin = p)
i <- input("signed-rank-exact-hollander"); w <- wilcox.test(i$x, i$y, paired = TRUE, conf.int = TRUE)
say("signed-rank-exact-hollander", V = w$statistic, p_one_sided_greater = wilcox.test(i$x, i$y, paired = TRUE, alternative = "greater")$p.value, p_two_sided = w$p.value, pseudo_median = w$estimate, ci_lower = w$conf.int[1], ci_upper = w$conf.int[2])
i <- input("signed-rank-zeros-ties"); d <- (i$x - i$y)[i$x != i$y]; r <- rank(abs(d)); signs <- as.matrix(expand.grid(rep(list(0:1), length(r)))); V <- sum(r[d > 0]); all_sums <- signs %*% r; e <- sum(r) / 2
w <- function(cc) wilcox.test(i$x, i$y, paired = TRUE, exact = FALSE, correct = cc)
say("signed-rank-zeros-ties", n_nonzero = length(d), V = V, p_normal_cc = w(TRUE)$p.value, p_normal_nocc = w(FALSE)$p.value, p_exact = mean(abs(all_sums - e) >= abs(V - e) - 1e-9))
i <- input("kruskal-hollander"); k <- kruskal.test(i$groups); say("kruskal-hollander", H = k$statistic, df = k$parameter, p = k$p.value)
i <- input("kruskal-ties-anova-welch"); k <- kruskal.test(i$groups); d <- data.frame(v = unlist(i$groups), g = factor(rep(seq_along(i$groups), lengths(i$groups)))); a <- summary(aov(v ~ g, d))[[1]]; w <- oneway.test(v ~ g, d)
say("kruskal-ties-anova-welch", H_tie_corrected = k$statistic, H_p = k$p.value, anova_F = a[1, 4], anova_df1 = a[1, 1], anova_df2 = a[2, 1], anova_p = a[1, 5], ss_between = a[1, 2], ss_within = a[2, 2], welch_F = w$statistic, welch_df2 = w$parameter[2], welch_p = w$p.value)
for (id in ids("anova-nist")) { g <- input(id)$groups; a <- summary(aov(v ~ g, data.frame(v = unlist(g), g = factor(rep(seq_along(g), lengths(g))))))[[1]]; say(id, ss_between = a[1, 2], ss_within = a[2, 2], F = a[1, 4], r_squared = a[1, 2] / sum(a[, 2]), residual_sd = sqrt(a[2, 3])) }
i <- input("quantile-7-6"); q <- function(type) quantile(i$x, i$p, type = type, names = FALSE)
say("quantile-7-6", type7 = q(7), type6 = q(6), iqr7 = IQR(i$x), iqr6 = IQR(i$x, type = 6), mad_raw = mad(i$x, constant = 1))
i <- input("quantile-even-ties"); say("quantile-even-ties", type7 = q(7), type6 = q(6), fivenum = fivenum(i$x))
i <- input("median-ci-binomial"); s <- sort(i$x); n <- length(s); k <- qbinom(.025, n, .5); if (pbinom(k, n, .5) > .025) k <- k - 1
say("median-ci-binomial", median = median(s), lower = s[k + 1], upper = s[n - k], coverage = 1 - 2 * pbinom(k, n, .5), rank_lower = k + 1, rank_upper = n - k)

## Clusters and regression ----------------------------------------------------------
icc <- function(y, g) { g <- factor(g); n <- as.numeric(table(g)); N <- length(y); k <- nlevels(g); a <- anova(lm(y ~ g)); n0 <- (N - sum(n^2) / N) / (k - 1); rho <- (a[1, 3] - a[2, 3]) / (a[1, 3] + (n0 - 1) * a[2, 3])
  list(msb = a[1, 3], msw = a[2, 3], n0 = n0, icc = rho, mean_cluster_size = N / k, deff_mean_size = 1 + (N / k - 1) * rho, deff_weighted_size = 1 + (sum(n^2) / N - 1) * rho, n_eff_mean_size = N / (1 + (N / k - 1) * rho)) }
for (id in c("cluster-icc-healing-index", "cluster-icc-complication", "cluster-orthodont-icc")) { i <- input(id); d <- columns(i); say_list(id, icc(d[[i$y]], d[[i$cluster]])) }
for (id in c("icc-shrout-fleiss", "edge-icc-negative")) { i <- input(id); say_list(id, icc(i$y, i$cluster)) }
cl <- function(m, id, type, adjust) sqrt(diag(as.matrix(sandwich::vcovCL(m, cluster = id, type = type, cadjust = adjust))))
mean_of <- function(y, id) { m <- lm(y ~ 1); G <- length(unique(id)); cr1 <- cl(m, id, "HC1", TRUE); ct <- clubSandwich::coef_test(m, vcov = "CR2", cluster = id); tq <- qt(.975, G - 1)
  list(N = length(y), G = G, mean = mean(y), se_naive = sd(y) / sqrt(length(y)), se_cr0 = cl(m, id, "HC0", FALSE), se_cr1 = cr1, se_cr2 = ct$SE, cr2_df_satterthwaite = ct$df_Satt, ci_cr1_tG1_lower = mean(y) - tq * cr1, ci_cr1_tG1_upper = mean(y) + tq * cr1) }
reg <- columns(input("cluster-icc-healing-index")); say_list("cluster-mean-healing-index", mean_of(reg$healing_index, reg$patient))
g <- glm(complication ~ 1, binomial, reg); s <- cl(g, reg$patient, "HC0", TRUE); l <- coef(g)[[1]]; tq <- qt(.975, 25)
say_list("cluster-proportion-complication", c(mean_of(reg$complication, reg$patient), list(events = sum(reg$complication), logit = l, logit_se_cr1_G = s, ci_logit_tG1_lower = plogis(l - tq * s), ci_logit_tG1_upper = plogis(l + tq * s))))
ols_cluster <- function(m, id) { hc <- function(type) sqrt(diag(sandwich::vcovHC(m, type))); ct <- clubSandwich::coef_test(m, vcov = "CR2", cluster = id)
  list(coef = coef(m), se_classic = sqrt(diag(vcov(m))), se_hc0 = hc("HC0"), se_hc1 = hc("HC1"), se_hc2 = hc("HC2"), se_hc3 = hc("HC3"), se_cr0 = cl(m, id, "HC0", FALSE), se_cr1_G = cl(m, id, "HC0", TRUE), se_cr1_stata = cl(m, id, "HC1", TRUE), se_cr2 = ct$SE, df_cr2_satterthwaite = ct$df_Satt) }
say_list("cluster-ols-healing-index", ols_cluster(lm(healing_index ~ group + age + gain_cm, reg), reg$patient))
orth <- columns(input("cluster-orthodont-icc")); say_list("cluster-orthodont-ols", ols_cluster(lm(distance ~ age + male, orth), orth$id))
i <- input("edge-clusters-all-size-1"); say("edge-clusters-all-size-1", se_naive = sd(i$y) / sqrt(length(i$y)), se_cr1 = cl(lm(i$y ~ 1), i$cluster, "HC1", TRUE))
ols <- function(m) { s <- summary(m); list(coef = s$coefficients[, 1], se = s$coefficients[, 2], t = s$coefficients[, 3], p = s$coefficients[, 4], r_squared = s$r.squared, adj_r_squared = s$adj.r.squared, residual_sd = s$sigma, df = m$df.residual, F = s$fstatistic[[1]]) }
say_list("ols-nist-longley", ols(lm(y ~ ., columns(input("ols-nist-longley"))))); i <- input("ols-nist-norris"); say_list("ols-nist-norris", ols(lm(i$y ~ i$x)))
logit <- function(g) { s <- summary(g)$coefficients; list(coef = s[, 1], se = s[, 2], z = s[, 3], p = s[, 4], loglik = as.numeric(logLik(g)), deviance = g$deviance, null_deviance = g$null.deviance, or = exp(s[, 1]), or_wald_lower = exp(s[, 1] - z975 * s[, 2]), or_wald_upper = exp(s[, 1] + z975 * s[, 2])) }
for (id in c("logit-spector-mazzeo", "logit-oring")) { i <- input(id); say_list(id, logit(glm(as.formula(i$formula), binomial, columns(i), control = tight))) }
g <- glm(complication ~ gain_cm + group, binomial, reg, control = tight)
say_list("logit-registry-fixture", c(logit(g), list(se_cr0 = cl(g, reg$patient, "HC0", FALSE), se_cr1_G = cl(g, reg$patient, "HC0", TRUE))))

## Time ---------------------------------------------------------------------------
i <- input("km-freireich-6mp"); sixmp <- Surv(i$time, i$event); when <- unique(i$time[i$event == 1]); at <- function(type) summary(survfit(sixmp ~ 1, conf.type = type), times = when)
s <- at("log"); say("km-freireich-6mp", time = s$time, n_risk = s$n.risk, surv = s$surv, se = s$std.err, lower = s$lower, upper = s$upper)
s <- at("log-log"); p <- at("plain"); m <- quantile(survfit(sixmp ~ 1, conf.type = "log-log"), .5)
say("km-freireich-6mp-loglog", time = s$time, surv = s$surv, se_greenwood = s$std.err, loglog_lower = s$lower, loglog_upper = s$upper, plain_lower = p$lower, plain_upper = p$upper, median = m$quantile, median_loglog_lower = m$lower, median_loglog_upper = m$upper, median_log_lower = quantile(survfit(sixmp ~ 1, conf.type = "log"), .5)$lower)
fr <- as.data.frame(input("logrank-freireich")[c("time", "event", "arm")]); s <- survdiff(Surv(time, event) ~ arm, fr)
say("logrank-freireich", observed = s$obs, expected = s$exp, chisq = s$chisq, variance = s$var[1, 1], p = pchisq(s$chisq, 1, lower.tail = FALSE))
restricted <- function(k, tau) { m <- summary(k, rmean = tau)$table; list(rmst = m[, "rmean"], se = m[, "se(rmean)"], median = m[, "median"]) }
r <- restricted(survfit(Surv(time, event) ~ arm, fr), 20); say_list("rmst-freireich", c(r, list(arms = c("6-MP", "placebo"), difference = r$rmst[[1]] - r$rmst[[2]], difference_se = sqrt(sum(r$se^2)))))
i <- input("km-lung-sex"); k <- summary(survfit(Surv(i$time, i$event) ~ i$sex))$table; s <- survdiff(Surv(i$time, i$event) ~ i$sex)
say("km-lung-sex", n = k[, "records"], events = k[, "events"], median = k[, "median"], lower = k[, "0.95LCL"], upper = k[, "0.95UCL"], logrank_chisq = s$chisq, logrank_p = pchisq(s$chisq, 1, lower.tail = FALSE))
i <- input("rmst-ovarian"); arm <- i[[setdiff(names(i), c("time", "event", "tau", "dataset"))[1]]]; k <- survfit(Surv(i$time, i$event) ~ arm); t <- summary(k, rmean = i$tau)$table
say("rmst-ovarian", n = t[, "records"], events = t[, "events"], rmst = t[, "rmean"], se = t[, "se(rmean)"], median = t[, "median"])
i <- input("logrank-3groups-ties"); s <- survdiff(Surv(i$time, i$event) ~ i$group);
say("logrank-3groups-ties", observed = s$obs, expected = s$exp, chisq = s$chisq, df = length(s$n) - 1, p = pchisq(s$chisq, length(s$n) - 1, lower.tail = FALSE))
ce <- summary(coxph(Surv(time, event) ~ arm, fr, ties = "efron"))$coefficients; cb <- summary(coxph(Surv(time, event) ~ arm, fr, ties = "breslow"))$coefficients
say("cox-freireich", coef_efron = ce[1], se_efron = ce[3], coef_breslow = cb[1], se_breslow = cb[3])
incidence <- function(time, status, times) { f <- summary(survfit(Surv(time, factor(status, 0:max(status))) ~ 1), times = times, extend = TRUE); p <- cmprsk::timepoints(cmprsk::cuminc(time, status), times)
  list(times = times, cif_event1 = f$pstate[, 2], cif_event2 = f$pstate[, 3], event_free = f$pstate[, 1], cmprsk_var_event1 = p$var[1, ], cmprsk_var_event2 = p$var[2, ], survival_se_event1 = f$std.err[, 2], survival_se_event2 = f$std.err[, 3]) }
for (id in c("aj-melanoma", "aj-fixture-ties")) { i <- input(id); say_list(id, incidence(i$time, i$status, unlist(checks[[id]]$expected$times))) }
gray <- function(i, group) { t <- cmprsk::cuminc(i$time, i$status, group)$Tests; list(t[1, ], t[2, ]) }
i <- input("aj-melanoma"); g <- lapply(gray(i, i$ulcer), function(t) list(stat = t[["stat"]], p = t[["pv"]], df = t[["df"]])); answers[["gray-melanoma"]] <- list(event1 = g[[1]], event2 = g[[2]])
i <- input("aj-fixture-ties"); g <- gray(i, i$group); answers[["aj-fixture-ties"]] <- c(answers[["aj-fixture-ties"]], list(gray_event1 = I(unname(g[[1]])), gray_event2 = I(unname(g[[2]]))))
i <- input("edge-km-all-censored"); k <- survfit(Surv(i$time, i$event) ~ 1); say("edge-km-all-censored", surv_at_12 = summary(k, times = 12)$surv, median = quantile(k, .5)$quantile, events = sum(k$n.event))
i <- input("edge-km-last-event"); k <- survfit(Surv(i$time, i$event) ~ 1); say("edge-km-last-event", time = k$time, surv = k$surv, median = quantile(k, .5)$quantile)
i <- input("edge-km-tie-event-censor"); k <- summary(survfit(Surv(i$time, i$event) ~ 1), times = c(4, 6)); say("edge-km-tie-event-censor", surv_at_4 = k$surv[1], n_risk_at_4 = k$n.risk[1], surv_at_6 = k$surv[2])

## Agreement and rest ---------------------------------------------------------------
i <- input("bland-altman-full-precision"); d <- i$a - i$b; n <- length(d); m <- mean(d); s <- sd(d); tq <- qt(.975, n - 1); k <- i$multiplier
say("bland-altman-full-precision", mean_diff = m, sd_diff = s, loa_lower = m - k * s, loa_upper = m + k * s, bias_ci_lower = m - tq * s / sqrt(n), bias_ci_upper = m + tq * s / sqrt(n), se_loa_1999 = s * sqrt(1 / n + k^2 / (2 * (n - 1))), se_loa_approx_sqrt3n = sqrt(3 / n) * s)
say("bland-altman-1986-pefr", mean_diff = m, sd_diff = s, loa196_lower = m - z975 * s, loa196_upper = m + z975 * s, bias_ci_lower = m - tq * s / sqrt(n), bias_ci_upper = m + tq * s / sqrt(n))
i <- input("smd-small-unequal"); d <- i$mean1 - i$mean2; say("smd-small-unequal", smd_average_variance = d / sqrt((i$sd1^2 + i$sd2^2) / 2), smd_binary = (i$p1 - i$p2) / sqrt((i$p1 * (1 - i$p1) + i$p2 * (1 - i$p2)) / 2))
i <- input("padjust-bh1995"); say("padjust-bh1995", holm_rejections = sum(p.adjust(i$p, "holm") <= i$alpha), holm = p.adjust(i$p, "holm"))
i <- input("padjust-unsorted-ties"); say("padjust-unsorted-ties", holm = p.adjust(i$p, "holm"))
z <- function(x, L, M, S) if (abs(L) < 1e-8) log(x / M) / S else ((x / M)^L - 1) / (L * S)
back <- function(z, L, M, S) if (abs(L) < 1e-8) M * exp(S * z) else M * (1 + L * S * z)^(1 / L)
i <- input("lms-cdc-weight-9mo"); say("lms-cdc-weight-9mo", z = sapply(i$x, z, i$L, i$M, i$S), centile_of_9.7 = 100 * pnorm(z(9.7, i$L, i$M, i$S)), value_at_p5 = back(qnorm(.05), i$L, i$M, i$S))
i <- input("lms-edge-L0-L1"); say("lms-edge-L0-L1", z = sapply(i$L, function(L) z(i$x, L, i$M, i$S)), value_at_z_minus2 = sapply(i$L, function(L) back(-2, L, i$M, i$S)))

## Distributions --------------------------------------------------------------------
curve <- list("fn-pnorm" = pnorm, "fn-qnorm" = qnorm, "fn-pt" = pt, "fn-qt" = qt, "fn-pchisq-upper" = function(x, d) pchisq(x, d, lower.tail = FALSE), "fn-qchisq" = qchisq,
  "fn-pf-upper" = function(f, a, b) pf(f, a, b, lower.tail = FALSE), "fn-pbeta" = pbeta, "fn-qbeta" = qbeta, "fn-pbinom" = pbinom, "fn-ppois" = ppois)
for (id in names(curve)) say(id, value = do.call(curve[[id]], unname(input(id))))

i <- input("kappa-cohen-1968"); p <- rows(i) / sum(rows(i)); say("kappa-cohen-1968", unweighted = 1 - (1 - sum(diag(p))) / (1 - sum(rowSums(p) * colSums(p))))

cat(toJSON(answers, auto_unbox = TRUE, digits = NA, na = "null", null = "null"))
