# Answers of R on survival methods that the printed sources don't cover: variance by patient, delayed entry, interval censoring,
# competing events with several rows a patient. All data come with R's packages survival and MASS; none is clinical evidence here.
suppressPackageStartupMessages({ library(survival); library(cmprsk); library(jsonlite) })
options(warn = 1)
answers <- list()
answer <- function(id, ...) answers[[id]] <<- list(...)
columns <- function(d) lapply(as.list(d), function(x) if (is.factor(x)) as.character(x) else as.numeric(x))
tight <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)

kidney <- survival::kidney
retino <- survival::retinopathy
heart <- survival::heart
lung <- survival::lung
mgus2 <- survival::mgus2

# ---- Kaplan-Meier, by patient ------------------------------------------------------------------------------------------
curve <- function(fit) {
  keep <- fit$n.event > 0 & fit$surv > 0
  q <- summary(fit)$table
  list(time = fit$time[keep], atRisk = fit$n.risk[keep], survival = fit$surv[keep],
       se = summary(fit, times = fit$time[keep])$std.err, lower = fit$lower[keep], upper = fit$upper[keep],
       median = unname(q["median"]), medianLower = unname(q["0.95LCL"]), medianUpper = unname(q["0.95UCL"]))
}
# Restricted mean from R's own influence matrix: the area under each patient's influence on the curve.
restricted <- function(fit, tau) {
  keep <- fit$time < tau
  time <- c(0, fit$time[keep], tau)
  surv <- c(1, fit$surv[keep])
  influence <- cbind(0, fit$influence.surv[, keep, drop = FALSE])
  list(tau = tau, estimate = sum(diff(time) * surv), influence = drop(influence %*% diff(time)))
}
for (scale in c("log-log", "log", "plain")) {
  fit <- survfit(Surv(time, status) ~ 1, data = kidney, cluster = id, conf.type = scale)
  answer(paste0("km-kidney-", scale), input = columns(kidney[c("time", "status", "id")]), expected = curve(fit))
}
fit <- survfit(Surv(time, status) ~ 1, data = kidney, cluster = id, influence = 1)
r <- restricted(fit, 300)
answer("rmst-kidney", input = columns(kidney[c("time", "status", "id")]),
       expected = list(tau = 300, estimate = r$estimate, se = sqrt(sum(r$influence^2))))
fit <- survfit(Surv(start, stop, event) ~ 1, data = heart, cluster = id, conf.type = "log-log")
answer("km-heart-entry", input = columns(heart[c("start", "stop", "event", "id")]), expected = curve(fit))
fit <- survfit(Surv(start, stop, event) ~ 1, data = heart, cluster = id, influence = 1)
r <- restricted(fit, 200)
answer("rmst-heart-entry", input = columns(heart[c("start", "stop", "event", "id")]),
       expected = list(tau = 200, estimate = r$estimate, se = sqrt(sum(r$influence^2))))
fit <- survfit(Surv(time, status == 1) ~ 1, data = lung, conf.type = "log-log")
answer("reverse-km-lung", input = columns(lung[c("time", "status")]), expected = curve(fit))

two <- lapply(0:1, function(k) {
  d <- retino[retino$trt == k, ]
  d <- d[order(d$id), ]
  restricted(survfit(Surv(futime, status) ~ 1, data = d, cluster = id, influence = 1), 48)
})
# Every patient has one eye in each arm, and both matrices are in the order of id.
answer("rmst-difference-retinopathy", input = columns(retino[c("futime", "status", "trt", "id")]),
       expected = list(tau = 48, estimate = two[[2]]$estimate - two[[1]]$estimate,
                       se = sqrt(sum((two[[2]]$influence - two[[1]]$influence)^2))))

# ---- log-rank and its robust score -------------------------------------------------------------------------------------
logrank <- function(id, d, formula, clusters, robust) {
  plain <- survdiff(formula, data = d)
  cox <- suppressWarnings(do.call(coxph, list(robust, data = d, cluster = clusters, ties = "breslow")))
  answer(id, input = columns(d), expected = list(observed = plain$obs, expected = plain$exp, statistic = plain$chisq, robust = as.numeric(cox$rscore)))
}
logrank("logrank-kidney-sex", kidney[c("time", "status", "sex", "id")], Surv(time, status) ~ sex, kidney$id, Surv(time, status) ~ factor(sex))
logrank("logrank-kidney-disease", kidney[c("time", "status", "disease", "id")], Surv(time, status) ~ disease, kidney$id, Surv(time, status) ~ disease)
logrank("logrank-retinopathy", retino[c("futime", "status", "trt", "id")], Surv(futime, status) ~ trt, retino$id, Surv(futime, status) ~ factor(trt))

robust <- coxph(Surv(start, stop, event) ~ transplant, data = heart, cluster = id, ties = "breslow")
answer("logrank-heart-entry", input = columns(heart[c("start", "stop", "event", "transplant", "id")]), expected = list(robust = as.numeric(robust$rscore)))

# ---- log-normal time model ---------------------------------------------------------------------------------------------
# survival 3.5-3 returns d/d(log sigma) of interval-censored rows with the wrong sign, so its clustered variance is wrong there
# (the scores of all rows then don't sum to zero at the maximum). The sandwich is built here from the scores with that sign put right.
clustered <- function(fit, design, status, cluster) {
  m <- residuals(fit, "matrix")
  score <- cbind(m[, "dg"] * cbind(1, design), ifelse(status == 3, -1, 1) * m[, "ds"])
  stopifnot(abs(colSums(score)) < 1e-5 * (1 + colSums(abs(score))))
  crossprod(rowsum(score %*% fit$naive.var, cluster))
}
model <- function(id, input, response, design, cluster) {
  fit <- survreg(response ~ design, dist = "lognormal", cluster = cluster, control = tight)
  status <- unclass(response)[, ncol(response)]
  var <- clustered(fit, design, status, cluster)
  if (!any(status == 3)) stopifnot(abs(var - fit$var) < 1e-9)
  g <- c(1, colMeans(design))
  p <- length(g)
  answer(id, input = input, expected = list(coefficients = unname(fit$coefficients), scale = fit$scale, logLikelihood = fit$loglik[2],
    naive = unname(sqrt(diag(fit$naive.var))), se = unname(sqrt(diag(var))), covariance = unname(var),
    median = exp(sum(g * fit$coefficients)), logSe = sqrt(drop(t(g) %*% var[1:p, 1:p] %*% g))))
}
design <- cbind(age = kidney$age, female = kidney$sex - 1)
model("time-model-kidney", columns(kidney[c("time", "status", "age", "sex", "id")]), Surv(kidney$time, kidney$status), design, kidney$id)
# The same patients seen every thirty days only: left-, interval- and right-censored.
binned <- with(kidney, data.frame(after = ifelse(status == 1, floor((time - 1) / 30) * 30, time), by = ifelse(status == 1, floor((time - 1) / 30) * 30 + 30, NA), id = id))
left <- ifelse(binned$after == 0, NA, binned$after)
model("time-model-kidney-interval", c(columns(binned), columns(data.frame(age = kidney$age, sex = kidney$sex))),
      Surv(left, binned$by, type = "interval2"), design, kidney$id)
lungs <- na.omit(lung[c("time", "status", "age", "sex", "ph.ecog", "inst")])
model("time-model-lung", columns(lungs), Surv(lungs$time, lungs$status == 2), as.matrix(lungs[c("age", "sex", "ph.ecog")]), lungs$inst)

# Few rows, three covariates: full steps of Newton's method overshoot here.
full <- na.omit(lung[c("time", "status", "age", "wt.loss", "meal.cal")])
few <- full[10:20, ]
model("time-model-lung-few", columns(few), Surv(few$time, few$status == 2), as.matrix(few[c("age", "wt.loss", "meal.cal")]), seq_len(nrow(few)))

# ---- interval-censored curve: R stops when nothing moves by more than 5e-5, so the tolerance is loose -----------------------
fit <- survfit(Surv(left, binned$by, type = "interval2") ~ 1)
edges <- sort(unique(c(binned$after[binned$after > 0], binned$by[!is.na(binned$by)])))
answer("turnbull-kidney", input = columns(binned), expected = list(time = edges, survival = summary(fit, times = edges, extend = TRUE)$surv))

# ---- competing events, several rows a patient ---------------------------------------------------------------------------
b <- survival::bladder1
b <- b[b$stop > b$start, ]
gaps <- data.frame(gap = b$stop - b$start, status = ifelse(b$status == 0, 0, ifelse(b$status == 1, 1, 2)), id = b$id, row = seq_len(nrow(b)))
# survival 3.5-3 takes no notice of `cluster` beside `id` for several states, so R's influence of each row is summed here by patient.
aj <- function(id, d, at, scale) {
  fit <- survfit(Surv(time, factor(status)) ~ 1, data = d, id = row, influence = TRUE)
  step <- findInterval(at, fit$time)
  # The influence has one more column than the curve: time zero comes first.
  errors <- function(k) sqrt(colSums(rowsum(fit$influence.pstate[, , k], d$id)^2))[step + 1]
  stopifnot(abs(sqrt(colSums(fit$influence.pstate[, , 2]^2))[step + 1] - fit$std.err[step, 2]) < 1e-12)
  p <- fit$pstate[step, 2]
  limits <- survival:::survfit_confint(p, errors(2), logse = FALSE, conf.type = scale, conf.int = 0.95)
  answer(id, input = columns(d[c("time", "status", "id")]), expected = list(at = at, incidence1 = p, incidence2 = fit$pstate[step, 3],
    free = fit$pstate[step, 1], se1 = errors(2), se2 = errors(3), lower1 = limits$lower, upper1 = limits$upper))
}
names(gaps)[1] <- "time"
aj("aj-bladder-gaps", gaps, c(3, 6, 12, 24, 36), "log-log")
aj("aj-bladder-gaps-log", gaps, c(3, 6, 12, 24, 36), "log")

# ---- Gray's test ---------------------------------------------------------------------------------------------------------
gray <- function(id, time, status, group) {
  fit <- cuminc(time, status, group)
  answer(id, input = list(time = time, status = status, group = as.character(group)),
    expected = list(statistic1 = fit$Tests[1, 1], p1 = fit$Tests[1, 2], df = fit$Tests[1, 3], statistic2 = fit$Tests[2, 1], p2 = fit$Tests[2, 2]))
}
first <- b[!duplicated(b$id), ]
gray("gray-bladder-first", first$stop, ifelse(first$status > 1, 2, first$status), first$treatment)
etime <- with(mgus2, ifelse(pstat == 0, futime, ptime))
estat <- with(mgus2, ifelse(pstat == 0, 2 * death, 1))
gray("gray-mgus", etime, estat, mgus2$sex)

# ---- Cox -------------------------------------------------------------------------------------------------------------------
cox <- function(id, input, response, design, cluster, ties) {
  fit <- coxph(response ~ design, cluster = cluster, ties = ties, control = coxph.control(eps = 1e-13, toler.chol = 1e-14, iter.max = 60))
  answer(id, input = input, expected = list(coefficients = unname(fit$coefficients), naive = unname(sqrt(diag(fit$naive.var))),
    se = unname(sqrt(diag(fit$var))), logLikelihood = fit$loglik[2], nullLogLikelihood = fit$loglik[1]))
}
cox("cox-kidney-efron", columns(kidney[c("time", "status", "age", "sex", "id")]), Surv(kidney$time, kidney$status), design, kidney$id, "efron")
cox("cox-kidney-breslow", columns(kidney[c("time", "status", "age", "sex", "id")]), Surv(kidney$time, kidney$status), design, kidney$id, "breslow")
gap <- with(gaps, cbind(number = b$number, size = b$size))
ok <- complete.cases(gap)
cox("cox-bladder-efron", c(columns(gaps[ok, c("time", "status", "id")]), columns(as.data.frame(gap[ok, ]))), Surv(gaps$time[ok], gaps$status[ok] == 1), gap[ok, ], gaps$id[ok], "efron")
hd <- as.matrix(data.frame(age = heart$age, year = heart$year, surgery = heart$surgery))
cox("cox-heart-entry", columns(heart[c("start", "stop", "event", "age", "year", "surgery", "id")]), Surv(heart$start, heart$stop, heart$event), hd, heart$id, "efron")

few <- full[31:40, ]
cox("cox-lung-few", columns(few), Surv(few$time, few$status == 2), as.matrix(few[c("age", "wt.loss", "meal.cal")]), seq_len(nrow(few)), "efron")

# ---- the normal tail that censored times need ------------------------------------------------------------------------------
z <- c(-40, -5, 0, 3, 20, 34.999, 35, 35.001, 37, 40, 100, 1000)
answer("normal-tail", input = list(z = z), expected = list(logUpper = pnorm(z, lower.tail = FALSE, log.p = TRUE),
  hazard = exp(dnorm(z, log = TRUE) - pnorm(z, lower.tail = FALSE, log.p = TRUE))))

cat(toJSON(answers, digits = NA, auto_unbox = TRUE, na = "null", null = "null"))
