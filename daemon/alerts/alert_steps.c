#include "alert_steps.h"

#include <assert.h>

static size_t
at_most(int64_t wanted, size_t line)
{
    return wanted < (int64_t)line ? (size_t)wanted : line;
}

static int64_t
again(const struct alert_policy *policy, int64_t now_utc_s)
{
    return policy->again_s > 0 ? now_utc_s + policy->again_s : INT64_MAX;
}

static struct alert_call_step
untaken_step(const struct alert_state *state, const struct alert_policy *policy, int64_t now_utc_s,
             size_t line)
{
    struct alert_call_step step = {.from = 0, .count = 1, .next_utc_s = INT64_MAX};
    int64_t age = now_utc_s > state->level_utc_s ? now_utc_s - state->level_utc_s : 0;
    int64_t passed;

    if (policy->everyone_s > 0 && age >= policy->everyone_s) {
        step.count = line;
        step.next_utc_s = now_utc_s + (policy->next_s > 0 ? policy->next_s : policy->everyone_s);
        return step;
    }
    if (policy->next_s > 0) {
        passed = age / policy->next_s;
        step.count = at_most(passed + 1, line);
        step.next_utc_s = now_utc_s - age + (passed + 1) * policy->next_s;
    }
    if (policy->everyone_s > 0 && now_utc_s - age + policy->everyone_s < step.next_utc_s) {
        step.next_utc_s = now_utc_s - age + policy->everyone_s;
    }
    if (step.next_utc_s == INT64_MAX) {
        step.next_utc_s = again(policy, now_utc_s);
    }
    if (state->people_called > step.count) {
        step.count = at_most((int64_t)state->people_called, line);
    }
    return step;
}

static struct alert_call_step
taken_step(const struct alert_state *state, const struct alert_policy *policy, int64_t now_utc_s,
           size_t line)
{
    struct alert_call_step step = {.from = state->taken_place % line, .count = 1};
    int64_t age = now_utc_s > state->taken_utc_s ? now_utc_s - state->taken_utc_s : 0;
    int64_t passed;

    if (policy->recheck_s <= 0) {
        step.next_utc_s = again(policy, now_utc_s);
        return step;
    }
    passed = age / policy->recheck_s;
    step.count = at_most(passed + 1, line);
    step.next_utc_s = now_utc_s - age + (passed + 1) * policy->recheck_s;
    return step;
}

struct alert_call_step
alert_steps_due(const struct alert_state *state, const struct alert_policy *policy,
                int64_t now_utc_s, size_t line)
{
    assert(line >= 1);
    return state->is_taken ? taken_step(state, policy, now_utc_s, line)
                           : untaken_step(state, policy, now_utc_s, line);
}
