/* What only a person in the office can do: another day, another battery, a price, a voice, or
 * whatever else is surely wanted of it. */
#include <string.h>

#include "found.h"
#include "memory.h"
#include "office_request.h"
#include "say.h"
#include "steps.h"

static const struct office_matter {
    const char *topic; /* id, and what follows "office:" in the alert's reason; NULL: of any */
    const char *brief;
    bool always; /* whatever is asked of it; else only by these words */
    const char *phrases;
} matters[] = {
    {"contact", "wants a person", false,
     "real person|actual person|live person|human|real human|talk to a person|speak to a person|"
     "talk to someone|speak to someone|speak with someone|talk with someone|talk to somebody|"
     "person i could talk|person i can talk|call me|phone me|ring me|missed call|missed a "
     "call|missed your call|missed ur call|"
     "you called me|did you call|llamada perdida|perdi su llamada|me llamaron|someone call|some "
     "one call|"
     "somebody call|someone * phone|someone * ring|a person|hablar con alguien|"
     "nobody answers|no one answers|nobody * answered|no one * answered|nobody picks up|"
     "no one picks up|nobody calls|nobody called|nadie contesta|nadie me contesta|nadie responde|"
     "nadie me responde|nadie me ha|nadie me llama|nadie llama|quiero quejarme|una queja|"
     "hablar con una persona|me puede marcar|me puede llamar|llameme|me pueden llamar|me llame"},
    {"contact", "renter in hospital", false,
     "in the hospital|in hospital|took * hospital|took * to the hospital|taken * hospital|"
     "taken * the hospital|went to the hospital|admitted|hospitalized|ambulance took|"
     "took * ambulance|took * the ambulance|took * an ambulance|taken * ambulance|en el hospital|"
     "al hospital|internado|internada|internaron|hospitalizado|hospitalizada|hospitalizaron|"
     "ambulancia * llevo|llevaron * ambulancia|llevo * ambulancia"},
    {"extend", "wants to extend", true,
     "keep it longer|extend|extra day|extra days|another day|another week|one more day|"
     "few more days|more days|hang on to it|otro dia|mas dias|quedarmelo"},
    {"extra-battery", "wants a battery", true,
     "extra battery|another battery|more batteries|one more battery|spare battery|otra bateria|"
     "mas baterias"},
    {"billing", "about money", true,
     "refund|deposit|charged me|double charged|charged twice|overcharged|my card|me cobraron|"
     "cobraron|cobro doble|me cobran|doble cargo|credit card|how much * "
     "cost|price|invoice|receipt|bill|"
     "precio|reembolso|deposito|tarjeta"},
};

enum matter
office_matter(const struct asked *asked)
{
    struct heard *heard = asked->heard;

    if (heard->text != asked->text) {
        heard->text = asked->text;
        heard->matter =
            kb_matter(asked->context->kb, asked->context->workspace, asked->text, asked->language);
    }
    return heard->matter;
}

const char *
office_reason_anew(const struct asked *asked, const char *reason)
{
    const struct context *context = asked->context;
    int count = 0;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        const char *told =
            context->alerts[i].level > ALERT_OFFICE ? context->alerts[i].reasons : "";

        for (; (told = strstr(told, reason)) != NULL; told += strlen(reason)) {
            count++;
        }
    }
    return count == 0 ? reason : memory_format(asked->arena, "%s-%d", reason, count + 1);
}

static const char request_reason[] = "office:request";

/* It surely wants something done, in words that no list has: told to staff by the title of the
 * topic, if one was found. NULL if it is no request. */
static const struct office_matter *
any_matter(const struct asked *asked, const char *topic_id)
{
    const struct topic *topic =
        topic_id == NULL ? NULL : kb_topic(asked->context->kb, topic_id, LANGUAGE_EN);
    struct office_matter *matter;

    if (office_matter(asked) != MATTER_REQUEST) {
        return NULL;
    }
    matter = memory_new(asked->arena, struct office_matter);
    matter->always = true;
    matter->brief = found_alerted_because(asked->context, request_reason)
                        ? "wants something else done"
                        : "wants something done";
    if (topic != NULL) {
        matter->brief = memory_format(asked->arena, "%s: %s", matter->brief, topic->title);
    }
    return matter;
}

static const struct office_matter *
matter_of_topic(const struct asked *asked, const char *topic_id)
{
    size_t i;

    for (i = 0; i < sizeof matters / sizeof matters[0]; i++) {
        if (strcmp(matters[i].topic, topic_id) == 0) {
            return matters[i].always || tokens_have(&asked->tokens, matters[i].phrases)
                       ? &matters[i]
                       : NULL;
        }
    }
    return NULL;
}

/* "Are you a robot or a real person" asks what answers here, and for nobody. */
static bool
asks_what_answers(const struct asked *asked)
{
    static const char asks[] =
        "are you|r u|are u|you a|is this|is that|is it|am i talking|am i speaking|am i texting|"
        "am i chatting|who is this|whos this|eres|es usted|es una|es un|hablo con|hablando con|"
        "escribo a|escribiendo con|contesta una|contesta un|responde una|responde un";
    static const char wishes[] =
        "want|wanna|need|let me|get me|give me|please|pls|can i|could i|may i|call|phone|ring|"
        "quiero|necesito|ocupo|quisiera|por favor|porfa|puedo|pueden|paseme|comuniqueme|llame|"
        "nobody|no one|nadie|queja|quejarme";

    return tokens_have(&asked->tokens, asks) && !tokens_have(&asked->tokens, wishes);
}

/* Whatever the text is about besides: who asks for a person gets one, and so does who is left with
 * the unit of somebody in hospital, in whichever sentence that is told. */
static const struct office_matter *
person_asked_for(const struct asked *asked)
{
    struct tokens told = tokens_read(asked->arena, asked->message->text);
    size_t i;

    if (tokens_have(&asked->tokens, matters[0].phrases)) {
        return asks_what_answers(asked) ? NULL : &matters[0];
    }
    for (i = 1; i < sizeof matters / sizeof matters[0]; i++) {
        if (strcmp(matters[i].topic, "contact") == 0 && tokens_have(&told, matters[i].phrases)) {
            return &matters[i];
        }
    }
    return NULL;
}

/* Renters of ours are answered by a person; others are told whom to call. */
static void
call(const struct asked *asked, struct verdict *verdict, const struct office_matter *matter,
     bool answered)
{
    bool active = asked_is_active_renter(asked);
    const char *id = matter->topic != NULL ? matter->topic : "request";
    const char *reason = matter->topic != NULL ? memory_format(asked->arena, "office:%s", id)
                                               : office_reason_anew(asked, request_reason);
    struct office_request request = office_request_read(asked, id);
    struct answer *answer;
    char *told;

    if (active) {
        verdict_alert(verdict, ALERT_OFFICE, false, reason,
                      office_request_brief(asked, id, matter->brief, &request));
    }
    if (answered && !active && matter->topic != NULL) {
        return; /* the topic's own text says whom to call */
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, id);
    answer->topic = matter->topic;
    answer->text = say(asked->arena, asked->context->house, asked->language,
                       !active                    ? SAY_OFFICE_CALL
                       : office_hours_wait(asked) ? SAY_OFFICE_WAITS
                                                  : SAY_OFFICE_TOLD,
                       NULL);
    told = active ? office_request_say(asked, id, &request) : NULL;
    if (told != NULL) {
        answer->text = memory_format(asked->arena, "%s %s", told, answer->text);
    }
    if (told != NULL && !answered) { /* the topic's own text has them */
        answer->text = memory_format(
            asked->arena, "%s %s", answer->text,
            say(asked->arena, asked->context->house, asked->language, SAY_OFFICE_HOURS, NULL));
    }
}

void
office_call(const struct asked *asked, struct verdict *verdict, const char *topic_id)
{
    const struct office_matter *matter = matter_of_topic(asked, topic_id);

    matter = matter != NULL ? matter : person_asked_for(asked);
    matter = matter != NULL ? matter : any_matter(asked, topic_id);
    if (matter == NULL) {
        return;
    }
    call(asked, verdict, matter, true);
    if (!matter->always || asked_is_active_renter(asked)) {
        verdict->answers[verdict->answer_count - 1].route = ROUTE_STAFF;
        if (verdict->route > ROUTE_STAFF) {
            verdict->route = ROUTE_STAFF;
        }
    }
}

static const struct office_matter *
matter_told(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < sizeof matters / sizeof matters[0]; i++) {
        if (tokens_have(&asked->tokens, matters[i].phrases)) {
            return &matters[i];
        }
    }
    return NULL;
}

bool
office_is_asked_for(const struct asked *asked)
{
    return matter_told(asked) != NULL || office_matter(asked) == MATTER_REQUEST;
}

bool
office_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct office_matter *matter = matter_told(asked);

    matter = matter != NULL ? matter : any_matter(asked, NULL);
    if (matter != NULL) {
        call(asked, verdict, matter, false);
    }
    return matter != NULL;
}
