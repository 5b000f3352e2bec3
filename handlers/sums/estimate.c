#include "estimate_parts.h"

#include <assert.h>

#include "memory.h"

char *
estimate_say(const struct asked *asked, enum phrase phrase, const char *argument)
{
    return say(asked->arena, asked->context->house, asked->language, phrase, argument, NULL);
}

void
estimate_append(char **text, const char *sentence)
{
    memory_append(text, "%s%s", (*text)[0] == '\0' ? "" : " ", sentence);
}

void
estimate_extra(struct answer *answer, const char *sentence)
{
    assert(answer->extra_count < ANSWER_EXTRAS_MAX);
    answer->extras[answer->extra_count++] = sentence;
}

const struct told *
estimate_keep(const struct asked *asked, const struct told *told)
{
    struct told *kept = memory_new(asked->arena, struct told);

    *kept = *told;
    return kept;
}

struct answer *
estimate_add(const struct asked *asked, struct verdict *verdict, enum answer_kind kind,
             enum route route, const struct told *told, const char *id, const char *topic)
{
    struct answer *answer = verdict_add(verdict, kind, route, id);

    answer->topic = topic;
    answer->read = estimate_keep(asked, told);
    if (asked->search.count > 0) {
        answer->why.score = asked->search.best[0].score;
        answer->why.nearest = asked->search.best[0].nearest;
    }
    return answer;
}

bool
estimate_charges(const struct told *told, const struct equipment *equipment, struct percent untold,
                 struct charges *charges)
{
    size_t i;
    int rest;

    charges->count = 0;
    for (i = 0; i < told->charge_count; i++) {
        charges->list[charges->count++] = told->charges[i];
    }
    for (i = 0; i < told->light_count && charges->count < BATTERY_SET_MAX; i++) {
        struct percent band;

        if (!equipment_gauge_band(equipment, told->lights[i], &band)) {
            return false;
        }
        charges->list[charges->count++] = band;
    }
    for (rest = told->count; rest > 0 && charges->count < BATTERY_SET_MAX; rest--) {
        charges->list[charges->count++] = untold;
    }
    return true;
}

char *
estimate_counted_with(const struct asked *asked, const struct running *running, const char *others)
{
    char *mode = say_mode(asked->arena, asked->language, running->figure->mode,
                          running->figure->setting_tenths);
    char *counted =
        running->is == RUNNING_DIFFERS
            ? estimate_say(asked, SAY_COUNTED_TOLD, mode)
            : say(asked->arena, asked->context->house, asked->language, SAY_COUNTED_ORDER, mode,
                  memory_format(asked->arena, "%s%s", say_for(asked->language, running->activity),
                                others),
                  NULL);

    /* On a phone of two renters a mix-up must show. */
    return asked->context->rental_count > 1
               ? memory_format(asked->arena, "%s: %s", asked->rental->first_name, counted)
               : counted;
}

void
estimate_say_counted(const struct asked *asked, const struct running *running, const char *others,
                     struct answer *answer)
{
    char *counted = estimate_counted_with(asked, running, others);

    if (asked->context->rental_count > 1) { /* whose it is must be said */
        answer->text = memory_format(asked->arena, "%s %s", answer->text, counted);
    } else {
        estimate_extra(answer, counted);
    }
}

char *
estimate_record_says(const struct asked *asked, const struct running *running)
{
    return say(asked->arena, asked->context->house, asked->language, SAY_RECORD_SAYS,
               say_mode(asked->arena, asked->language, running->order->mode,
                        running->order->setting_tenths),
               say_for(asked->language, running->activity), NULL);
}

static const char *
assumptions(const struct asked *asked, const struct ground *ground)
{
    return memory_format(asked->arena, "%s%s; health as measured or %d %%%s",
                         ground->running.is == RUNNING_DIFFERS ? "told " : "ordered ",
                         activity_name(ground->running.activity),
                         asked->equipment->retirement_health,
                         ground->remembered ? "; charge told before" : "");
}

void
estimate_attach(const struct asked *asked, struct answer *answer, const struct ground *ground,
                enum estimate_kind kind, int batteries)
{
    struct estimate *estimate = memory_new(asked->arena, struct estimate);

    *estimate = (struct estimate){.kind = kind,
                                  .minutes = ground->time,
                                  .mode = ground->running.figure->mode,
                                  .setting_tenths = ground->running.figure->setting_tenths,
                                  .activity = ground->running.activity,
                                  .batteries = batteries,
                                  .from_utc_s = asked->context->now_utc_s,
                                  .assumed = assumptions(asked, ground)};
    answer->estimate = estimate;
}

void
estimate_attach_plain(const struct asked *asked, struct answer *answer, enum estimate_kind kind,
                      struct minutes minutes, int batteries, const char *assumed)
{
    struct estimate *estimate = memory_new(asked->arena, struct estimate);

    *estimate = (struct estimate){.kind = kind,
                                  .minutes = minutes,
                                  .mode = MODE_COUNT,
                                  .batteries = batteries,
                                  .from_utc_s = asked->context->now_utc_s,
                                  .assumed = assumed};
    answer->estimate = estimate;
}

void
estimate_append_read(const struct asked *asked, const struct told *told, char **text)
{
    const char *read = say_read(asked->arena, asked->language, told);

    if (read[0] != '\0') {
        estimate_append(text, estimate_say(asked, SAY_READ, read));
    }
}

char *
estimate_wall_only_mode(const struct asked *asked, const struct running *running,
                        const struct told *told)
{
    bool is_told = running->is == RUNNING_DIFFERS && told->has_setting;
    enum mode mode;
    int setting_tenths;

    if (asked->equipment == NULL || running->order == NULL) {
        return NULL;
    }
    mode = is_told && told->has_mode ? told->mode : running->order->mode;
    setting_tenths = is_told ? told->setting_tenths : running->order->setting_tenths;
    return equipment_needs_wall(asked->equipment, mode, setting_tenths)
               ? say_mode(asked->arena, asked->language, mode, setting_tenths)
               : NULL;
}

char *
estimate_wall_only(const struct asked *asked, const struct running *running,
                   const struct told *told)
{
    char *mode = estimate_wall_only_mode(asked, running, told);

    return mode == NULL ? NULL : estimate_say(asked, SAY_WALL_ONLY, mode);
}
