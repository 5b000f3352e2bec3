/* How long a cylinder lasts (power/cylinder.h). */
#include <string.h>

#include "cylinder.h"
#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"

static const char cylinder_left[] = "cylinder-left";

enum {
    PSI_MAX = 5000,
    BAR_MAX = 344,
    MINUTE_S = 60,
    /* With less left somebody must act; more so if its gauge is watched as it falls, for another
     * one takes an hour to come (common practice, no source). */
    NEARLY_EMPTY_MIN = 30,
    NEARLY_EMPTY_WATCHED_MIN = 60
};

static const char how_long[] = "how long|how much time|how many hours|how many minutes|hours|last|"
                               "lasts|left|cuanto|cuanta|cuantas horas|dura|queda|alcanza";
static const char conserver[] = "conserver|conserving|conservador|economizador|pulse dose|"
                                "on pulse|en pulso|on demand";

static const char on_it[] =
    "on the bottle|on the tank|on the cylinder|on the backup|on the spare|on my bottle|on my tank|"
    "on my cylinder|on my backup|on my spare|on bottle|on tank|on backup|on the oxygen tank|"
    "on the e tank|on the little tank|on the spare tank|on the backup tank|using the bottle|"
    "using the tank|using the cylinder|using the backup|using my tank|using my backup|"
    "switched to the bottle|switched to the tank|switched to the cylinder|switched to the backup|"
    "con el tanque|con mi tanque|en el tanque|usando el tanque|usando el cilindro|con el cilindro|"
    "usando la reserva|con la reserva|en la reserva";
static const char at_present[] = "now|im|i am|were|we are|hes|he is|shes|she is|mom is|dad is|"
                                 "switched|using|ya|ahora|estoy|estamos|esta|usando|uso";
static const char supposed[] = "if|when|once|would|could|what if|in case|can i|si|cuando|puedo";

/* What is worked with: told, or as the record has it. */
struct cylinder_sum {
    const char *size; /* NULL if neither tells */
    int flow_tenths;  /* 0 if neither tells */
    bool size_of_record, flow_of_record;
    bool flow_differs; /* told otherwise than ordered */
};

static struct cylinder_sum
find_cylinder(const struct asked *asked, const struct told *told)
{
    const struct backup *backup = asked->rental == NULL ? NULL : &asked->rental->backup;
    bool recorded = backup != NULL && backup->known && backup->kind != NULL &&
                    strcmp(backup->kind, "cylinder") == 0;
    struct cylinder_sum sum = {.size = told->size[0] != '\0' ? told->size : NULL,
                               .flow_tenths = told->flow_tenths};

    if (!recorded) {
        return sum;
    }
    if (sum.size == NULL && backup->size != NULL) {
        sum.size = backup->size;
        sum.size_of_record = true;
    }
    if (sum.flow_tenths == 0 && backup->flow_tenths > 0) {
        sum.flow_tenths = backup->flow_tenths;
        sum.flow_of_record = true;
    }
    sum.flow_differs = backup->flow_tenths > 0 && sum.flow_tenths != backup->flow_tenths;
    return sum;
}

static void
lacks(const struct asked *asked, bool is_missing, enum phrase phrase, char **list)
{
    if (is_missing) {
        memory_append(list, "%s%s", (*list)[0] == '\0' ? "" : ", ",
                      estimate_say(asked, phrase, NULL));
    }
}

static bool
ask_what_lacks(const struct asked *asked, struct verdict *verdict, const struct told *told,
               const struct cylinder_sum *sum)
{
    bool no_gauge = (told->psi <= 0 && told->bar <= 0) || told->psi > PSI_MAX ||
                    (told->psi <= 0 && told->bar > BAR_MAX);
    char *list = memory_copy(asked->arena, "");
    char *text = memory_copy(asked->arena, "");

    lacks(asked, sum->size == NULL, SAY_CYLINDER_SIZE, &list);
    lacks(asked, no_gauge, SAY_CYLINDER_GAUGE, &list);
    lacks(asked, sum->flow_tenths == 0 || sum->flow_tenths > CYLINDER_FLOW_TENTHS_MAX,
          SAY_CYLINDER_FLOW, &list);
    if (list[0] == '\0') {
        return false;
    }
    estimate_append_read(asked, told, &text);
    estimate_append(&text, estimate_say(asked, SAY_ASK_CYLINDER, list));
    estimate_ask_back(asked, verdict, told, cylinder_left, text);
    return true;
}

/* "From our record: E, 2 L/min." */
static void
append_record(const struct asked *asked, const struct cylinder_sum *sum, char **text)
{
    char *list = memory_copy(asked->arena, sum->size_of_record ? sum->size : "");

    if (sum->flow_of_record) {
        memory_append(&list, "%s%s L/min", list[0] == '\0' ? "" : ", ",
                      say_tenths(asked->arena, sum->flow_tenths));
    }
    if (list[0] != '\0') {
        estimate_append(text, estimate_say(asked, SAY_CYLINDER_OF_RECORD, list));
    }
}

static char *
lasts_text(const struct asked *asked, const struct told *told, const struct cylinder_sum *sum,
           struct minutes time)
{
    char *text;

    if (time.low == 0) {
        text = estimate_say(asked, SAY_CYLINDER_EMPTY, NULL);
    } else {
        text = say(asked->arena, asked->context->house, asked->language, SAY_CYLINDER_LASTS,
                   say_minutes(asked->arena, time.low),
                   say_clock(asked->arena, asked->context->zone,
                             asked->context->now_utc_s + time.low * MINUTE_S),
                   NULL);
    }
    estimate_append_read(asked, told, &text);
    append_record(asked, sum, &text);
    if (sum->flow_differs) {
        estimate_append(&text,
                        estimate_say(asked, SAY_CYLINDER_FLOW_DIFFERS,
                                     say_tenths(asked->arena, asked->rental->backup.flow_tenths)));
    }
    return text;
}

/* The same cylinder as that of which the time was worked out last in this conversation, for its
 * gauge has not risen: takes the size and flow that it had. */
static bool
take_of_before(const struct asked *asked, struct told *told)
{
    enum { GAUGE_ERROR = 100, GAUGE_ERROR_BAR = 7 };
    const struct last_answer *last = &asked->context->conversation.last;
    const struct told *before = &last->told;
    bool is_same = (told->psi > 0 && told->psi <= before->psi + GAUGE_ERROR) ||
                   (told->bar > 0 && told->bar <= before->bar + GAUGE_ERROR_BAR);

    if (!last->is_sum || before->kind != TOLD_CYLINDER || !is_same || asked->which_rental ||
        asked_begins_anew(asked->context) ||
        (told->size[0] != '\0' && strcmp(told->size, before->size) != 0)) {
        return false;
    }
    memcpy(told->size, before->size, sizeof told->size);
    told->flow_tenths = told->flow_tenths > 0 ? told->flow_tenths : before->flow_tenths;
    return true;
}

/* "How long would 400 psi last": of no cylinder in use. */
static bool
is_supposed(const struct tokens *tokens)
{
    return tokens_have(tokens, "if|would|what if|could|should|si|en caso");
}

/* So little is left that somebody must bring or find another before it ends. With a record it is
 * asked for a plug first (estimate_see_to_plug()), unless the gauge is watched. */
static void
call_if_nearly_empty(const struct asked *asked, struct verdict *verdict, struct answer *answer,
                     int minutes, bool is_watched)
{
    bool has_record = asked->rental != NULL;

    if (minutes >= (is_watched ? NEARLY_EMPTY_WATCHED_MIN : NEARLY_EMPTY_MIN) ||
        (has_record && !is_watched) || is_supposed(&asked->tokens) ||
        verdict->alert.level >= ALERT_URGENT) {
        return;
    }
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:cylinder-low", "cylinder nearly empty");
    answer->text =
        memory_format(asked->arena, "%s %s", answer->text,
                      estimate_say(asked, has_record ? SAY_STAFF_ALERTED : SAY_CYLINDER_LOW, NULL));
}

void
estimate_cylinder(const struct asked *asked, struct verdict *verdict, const struct told *of_text)
{
    struct told known = *of_text, *told = &known;
    struct cylinder_sum sum;
    bool is_conserved =
        (told->has_mode && told->mode != MODE_CONTINUOUS) || tokens_have(&asked->tokens, conserver);
    struct minutes time;
    struct answer *answer;
    bool is_watched;

    is_watched = take_of_before(asked, told);
    sum = find_cylinder(asked, told);
    if (is_conserved || (sum.size != NULL && cylinder_factor(sum.size) == 0)) {
        estimate_to_person(asked, verdict, told, cylinder_left,
                           estimate_say(asked, SAY_CYLINDER_PERSON, NULL), ALERT_URGENT,
                           "power:no-cylinder-figure", "cylinder left?");
        return;
    }
    if (ask_what_lacks(asked, verdict, told, &sum)) {
        return;
    }
    time = cylinder_time(cylinder_factor(sum.size),
                         told->psi > 0 ? cylinder_gauge(told->psi) : cylinder_gauge_bar(told->bar),
                         sum.flow_tenths);
    answer =
        estimate_add(asked, verdict, ANSWER_ESTIMATE, sum.flow_differs ? ROUTE_STAFF : ROUTE_ANSWER,
                     told, cylinder_left, cylinder_left);
    answer->text = lasts_text(asked, told, &sum, time);
    estimate_extra(answer, estimate_say(asked, SAY_CYLINDER_RESIDUAL, NULL));
    if (time.low > 0) {
        estimate_extra(answer,
                       estimate_say(asked, SAY_UP_TO, say_minutes(asked->arena, time.high)));
    }
    estimate_attach_plain(asked, answer, ESTIMATE_CYLINDER, time, 0,
                          "gauge 50 psi either way; 200 psi left in it");
    if (sum.flow_differs) {
        verdict_alert(verdict, ALERT_URGENT, false, "power:differs", "cylinder flow differs");
    }
    if (asked->rental != NULL) {
        estimate_see_to_plug(asked, verdict, time);
    }
    call_if_nearly_empty(asked, verdict, answer, time.low, is_watched);
}

/* "The tank says 1000, how long is that? does it go back in the case": the second tells no gauge,
 * asks for no time and is surely about another topic. */
static bool
is_about_else(const struct asked *asked)
{
    return asked->told->psi <= 0 && asked->told->bar <= 0 &&
           !tokens_have(&asked->tokens, how_long) && asked->search.count > 0 &&
           asked->search.sureness == SURE &&
           strcmp(asked->search.best[0].topic->id, cylinder_left) != 0;
}

/* "How long does my tank last?": of a cylinder, and nothing else is told. The topic says what to
 * text, and what is texted then is put together. */
static bool
asks_in_general(const struct asked *asked)
{
    return tokens_have(&asked->tokens, how_long) && asked_is_surely_about(asked, cylinder_left);
}

bool
cylinder_left_was_asked(const struct asked *before, struct verdict *verdict)
{
    struct told told;

    return cylinder_left_decide(before, verdict) ||
           (estimate_read(before, TOLD_CYLINDER, &told) && asks_in_general(before));
}

/* "I'm on the bottle now": they breathe from it. */
static bool
is_on_it(const struct tokens *tokens)
{
    return tokens_have(tokens, on_it) && tokens_have(tokens, at_present) &&
           !tokens_have(tokens, supposed);
}

/* What lacks is asked, or the time is told; and a person hears that the unit is not in use. */
static void
answer_on_it(const struct asked *asked, struct verdict *verdict)
{
    struct told told;

    (void)estimate_read(asked, TOLD_CYLINDER, &told);
    if (!estimate_is_said(verdict, cylinder_left)) {
        estimate_cylinder(asked, verdict, &told);
    }
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:on-backup", "breathes from the backup");
}

bool
cylinder_left_decide(const struct asked *asked, struct verdict *verdict)
{
    struct told told;

    if (is_on_it(&asked->tokens) && tokens_have(&asked->tokens, how_long) &&
        !asked->told->impossible) {
        answer_on_it(asked, verdict);
        return true;
    }
    if (!estimate_read(asked, TOLD_CYLINDER, &told) || told.impossible) {
        return false;
    }
    if (told.psi <= 0 && told.bar <= 0 &&
        !(tokens_have(&asked->tokens, how_long) && told.size[0] != '\0' && told.flow_tenths > 0)) {
        if (asks_in_general(asked)) {
            (void)open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
        }
        return false;
    }
    if (is_about_else(asked)) {
        return false;
    }
    if (!estimate_is_said(verdict, cylinder_left)) {
        estimate_cylinder(asked, verdict, &told);
    }
    return true;
}
