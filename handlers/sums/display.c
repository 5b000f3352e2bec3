/*
 * The renter reads a word or sign off the display. What it means is the unit's own table, never a
 * guess; and if oxygen stops with it, staff are called as for a unit that stopped.
 */
#include "display.h"

#include <string.h>

#include "memory.h"
#include "say.h"
#include "steps.h"
#include "worn_device.h"

enum { LEAD_IN = 5, READ_BEFORE = 3, READ_AFTER = 2, SHORTENED = 4, WORDS_MAX = 8 };

static const char id_display[] = "display";

/* "What if it says" asks for a plan: nobody is called. */
static const char supposed[] = "what if|in case|if it says|if it shows|que pasa si|si dice|si sale";
static const char read_before[] =
    " say says said saying flashes flashing blinks blinking displays screen display shows show "
    "showing reads read message alarm whats "
    "pantalla dice dijo diciendo sale salio salen muestra aparece aparecio significa marca "
    "mensaje letrero alarma ";
static const char screens[] = " screen display panel readout pantalla equipo unit machine maquina ";
static const char read_after[] = " mean means meaning message alarm alert warning screen display "
                                 "flashing blinking significa mensaje alarma pantalla ";
static const char around_alone[] =
    " the a it its is on in and now still just please pls help ok hi hello what huh again my this "
    "that little el la un una en y ahora ya ayuda por favor hola que es eso ";
static const char symbols[] = " symbol sign icon picture light simbolo ";

static const char capitals[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

static bool
is_small(char letter)
{
    return letter >= 'a' && letter <= 'z';
}

/* A word of the table as renters write it. */
static bool
is_word(const struct tokens *tokens, size_t at, const char *word)
{
    static const struct {
        const char *word, *written;
    } others[] = {{"symbol", symbols},        {"battery", " bateria pila bat batt "},
                  {"oxygen", " o2 oxigeno "}, {"low", " bajo baja "},
                  {"empty", " vacia vacio "}, {"breath", " respiracion breathing "}};
    size_t length = at < tokens->count ? strlen(tokens->list[at].text) : 0, i;

    for (i = 0; i < sizeof others / sizeof others[0]; i++) {
        if (strcmp(word, others[i].word) == 0 && token_among(tokens, at, others[i].written)) {
            return true;
        }
    }
    return token_is(tokens, at, word) ||
           (length >= SHORTENED && strncmp(word, tokens->list[at].text, length) == 0);
}

/* The words stand at `at`, in any order: "LOW BATT" is BATTERY LOW. */
static bool
has_words(const struct tokens *tokens, size_t at, const struct tokens *words)
{
    unsigned taken = 0;
    size_t i, j;

    for (i = 0; i < words->count; i++) {
        for (j = 0; j < words->count && j < WORDS_MAX; j++) {
            if ((taken & (1U << j)) == 0 && is_word(tokens, at + j, words->list[i].text)) {
                taken |= 1U << j;
                break;
            }
        }
        if (j == words->count || j == WORDS_MAX) {
            return false;
        }
    }
    return words->count > 0;
}

static bool
has_small_letter(const char *text, size_t start, size_t end)
{
    size_t i;

    for (i = start; i < end && text[i] != '\0'; i++) {
        if (is_small(text[i])) {
            return true;
        }
    }
    return false;
}

static bool
is_alone(const struct tokens *tokens, size_t at, size_t after)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if ((i < at || i >= after) && tokens->list[i].kind != TOKEN_SIGN &&
            !token_among(tokens, i, around_alone)) {
            return false;
        }
    }
    return true;
}

/* "on the screen", "en la pantalla" */
static bool
is_on_screen(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " on in en ") &&
           (token_among(tokens, at + 1, screens) || token_among(tokens, at + 2, screens));
}

/* The words are ordinary ones as well ("clean filter", "plug in"): something must tell. */
static bool
is_read_off(const struct asked *asked, size_t at, size_t after)
{
    const struct tokens *tokens = &asked->tokens;
    size_t start = tokens->list[at].start, end = tokens->list[after - 1].end, i;

    for (i = tokens_back(at, READ_BEFORE); i < after + READ_AFTER; i++) {
        if ((i < at && token_among(tokens, i, read_before)) ||
            (i >= after && token_among(tokens, i, read_after))) {
            return true;
        }
    }
    if (token_among(tokens, after - 1, symbols) || is_on_screen(tokens, after)) {
        return true;
    }
    if (is_alone(tokens, at, after)) {
        /* in small letters it may ask how to do it */
        return !is_small(asked->text[tokens->list[after - 1].start]) ||
               asked->search.sureness != SURE ||
               strcmp(asked->search.best[0].topic->id, "alarm") == 0;
    }
    return !has_small_letter(asked->text, start, end) &&
           has_small_letter(asked->text, 0, strlen(asked->text));
}

const struct alarm *
display_shown(const struct asked *asked, const struct equipment *equipment, size_t *start,
              size_t *end)
{
    size_t i, at;

    for (i = 0; equipment != NULL && i < equipment->alarm_count; i++) {
        struct tokens words = tokens_read(asked->arena, equipment->alarms[i].shows);

        for (at = 0; at < asked->tokens.count; at++) {
            if (!has_words(&asked->tokens, at, &words) ||
                !is_read_off(asked, at, at + words.count) ||
                worn_device_tells(&asked->tokens, at)) {
                continue;
            }
            if (start != NULL) {
                *start = asked->tokens.list[at].start;
            }
            if (end != NULL) {
                *end = asked->tokens.list[at + words.count - 1].end;
            }
            return &equipment->alarms[i];
        }
    }
    return NULL;
}

/* Capitals, and no small letter. */
static bool
is_capitals(const char *text)
{
    return !has_small_letter(text, 0, strlen(text)) && text[strcspn(text, capitals)] != '\0';
}

/* Where what the display shows begins: behind "screen says:", else at 0 if all is in capitals. */
static size_t
shown_from(const struct tokens *tokens, const char *text)
{
    size_t i;

    for (i = 0; i < tokens->count && i <= LEAD_IN; i++) {
        if (i > 0 && token_is(tokens, i, ":")) {
            return i + 1;
        }
        if (!token_among(tokens, i, read_before) && !token_among(tokens, i, around_alone)) {
            break;
        }
    }
    return is_capitals(text) ? 0 : tokens->count;
}

static bool
is_row(void *arena, const struct equipment *equipment, const struct tokens *tokens, size_t from)
{
    size_t end = tokens->count, i;

    while (end > from && tokens->list[end - 1].kind == TOKEN_SIGN) {
        end--;
    }
    for (i = 0; equipment != NULL && from < end && i < equipment->alarm_count; i++) {
        struct tokens words = tokens_read(arena, equipment->alarms[i].shows);

        if (words.count == end - from && has_words(tokens, from, &words)) {
            return true;
        }
    }
    return false;
}

static bool
is_whole_row(const struct asked *whole, const char *text)
{
    struct tokens tokens = tokens_read(whole->arena, text);
    size_t from = shown_from(&tokens, text), count, i;
    const struct equipment *const *all;

    if (whole->equipment != NULL) {
        return is_row(whole->arena, whole->equipment, &tokens, from);
    }
    all = kb_equipment_all(whole->context->kb, &count);
    for (i = 0; i < count; i++) {
        if (is_row(whole->arena, all[i], &tokens, from)) {
            return true;
        }
    }
    return false;
}

bool
display_is_word(const struct asked *whole, const char *text)
{
    const struct context *context = whole->context;
    size_t i;

    if (context->role == SENDER_STAFF || !is_whole_row(whole, text)) {
        return false;
    }
    for (i = 0; i < context->recent_count; i++) {
        if (is_capitals(context->recent[i].text) && !is_whole_row(whole, context->recent[i].text)) {
            return false; /* "HELP", "NO BREATH": capitals tell nothing of this sender */
        }
    }
    return true;
}

/* The question, or the text that it is a piece of. */
static bool
is_only_word(const struct asked *asked)
{
    return display_is_word(asked, asked->text) ||
           (asked_in_message(asked) && display_is_word(asked, asked->message->text));
}

/* It is a word of the display that would be a sign, were it told of a person: nobody knows. */
static bool
may_be_of_person(const struct asked *asked)
{
    struct sign_match match;

    return display_is_word(asked, asked->text) &&
           kb_find_signs(asked->context->kb, asked->context->workspace, asked->text, &match, 1) > 0;
}

/* What some unit of the house would show; `*other` if it is not the renter's own. */
static const struct alarm *
shown_by_any(const struct asked *asked, bool *other)
{
    const struct alarm *alarm = display_shown(asked, asked->equipment, NULL, NULL);
    const struct equipment *const *all;
    size_t count, i;

    *other = alarm == NULL;
    all = kb_equipment_all(asked->context->kb, &count);
    for (i = 0; i < count && alarm == NULL; i++) {
        alarm = display_shown(asked, all[i], NULL, NULL);
    }
    return alarm;
}

static void
call_staff(const struct asked *asked, struct verdict *verdict, const struct alarm *alarm,
           bool other)
{
    const char *brief = memory_format(asked->arena, "display %s", alarm->shows);

    if (tokens_have(&asked->tokens, supposed)) {
        return;
    }
    if (alarm->oxygen_stops || may_be_of_person(asked)) {
        verdict_alert(verdict, ALERT_URGENT, true, "trouble:display", brief);
    } else if ((other && asked_is_active_renter(asked)) ||
               equipment_trouble_told(asked) != TROUBLE_NONE) {
        verdict_alert(verdict, ALERT_OFFICE, false, "trouble:display", brief);
    }
}

static const char *
meaning_of(const struct asked *asked, const struct alarm *alarm)
{
    if (asked->language == LANGUAGE_ES && alarm->meaning_es != NULL) {
        return alarm->meaning_es;
    }
    return say(asked->arena, asked->context->house, asked->language, SAY_IN_ENGLISH, alarm->meaning,
               NULL);
}

static bool
is_page(const struct topic *topic)
{
    return strcmp(topic->id, "alarm") == 0 || strcmp(topic->id, "read-display") == 0;
}

/* "E05", "Er 5", "error 05", "codigo 12" */
static bool
is_code(const struct tokens *tokens, size_t at)
{
    enum { DIGITS_MAX = 3 };
    static const char named[] = " error err er code codigo fault falla ";
    const char *text = tokens->list[at].text;
    size_t letters = strspn(text, "er"), digits = strspn(text + letters, "0123456789");

    if (text[0] == 'e' && digits > 0 && digits <= DIGITS_MAX && text[letters + digits] == '\0') {
        return true;
    }
    return at > 0 && tokens->list[at].kind == TOKEN_NUMBER && token_among(tokens, at - 1, named);
}

static bool
quotes_code(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < asked->tokens.count; i++) {
        if (is_code(&asked->tokens, i)) {
            return true;
        }
    }
    return false;
}

/* Words that no table of ours has, or of a unit that we do not know: how to find them. */
static bool
tell_page(const struct asked *asked, struct verdict *verdict, bool is_listed)
{
    const struct topic_search *search = &asked->search;
    const struct topic *page = kb_topic(asked->context->kb, "alarm", asked->language);
    bool between = search->sureness == BETWEEN_TWO && search->count > 1 &&
                   is_page(search->best[0].topic) && is_page(search->best[1].topic);

    between = between && tokens_have(&asked->tokens, "screen|display|says|shows|message|symbol|"
                                                     "pantalla|dice|aparece|mensaje|simbolo");
    if (page == NULL ||
        !(quotes_code(asked) || ((is_listed || between) && search->sureness != SURE))) {
        return false;
    }
    topics_answer(asked, verdict, page);
    return true;
}

/* It was there before: what the page says about it did not help. */
static bool
comes_again(const struct asked *asked)
{
    static const char again[] =
        "again|keeps|comes back|came back|still|every time|wont go|wont clear|over and over|times|"
        "otra vez|vuelve|volvio|regresa|regreso|sigue|sale y sale|cada rato|de nuevo|no se quita|"
        "veces|cada vez";

    return quotes_code(asked) && tokens_have(&asked->tokens, again);
}

/* "It says E42": in capitals or as a code, and no table has it. */
static bool
quotes_unknown(const struct asked *asked)
{
    static const char says[] =
        " says say said shows show reads displays dice aparece muestra sale ";
    const struct tokens *tokens = &asked->tokens;
    size_t i;

    if (quotes_code(asked)) {
        return true;
    }
    if (asked->search.count == 0 || !is_page(asked->search.best[0].topic)) {
        return false;
    }
    for (i = 1; i < tokens->count; i++) {
        const struct token *token = &tokens->list[i];

        if (token_among(tokens, i - 1, says) && token->kind == TOKEN_WORD &&
            token->end - token->start > 1 &&
            !has_small_letter(asked->text, token->start, token->end)) {
            return true;
        }
    }
    return false;
}

/* "Check flow beeping": it sounds an alarm, and two words stand there as displays have them. */
static bool
quotes_with_alarm(const struct asked *asked)
{
    static const char sounds[] = "beep|beeps|beeping|alarm|alarming|pita|pitando|suena|alarma";
    static const char asks[] = "how|what|when|why|does|do|will|can|should|if|?|como|que|cuando|si";
    static const char shown[] =
        " check flow low high oxygen o2 sensor error fault code temp temperature pressure filter "
        "service replace cannula tube breath pump fan vent system compressor motor internal fail "
        "failure revise flujo bajo alto presion filtro falla ";
    const struct tokens *tokens = &asked->tokens;
    size_t i;

    for (i = 1; i < tokens->count; i++) {
        if (token_among(tokens, i - 1, shown) &&
            (token_among(tokens, i, shown) || tokens->list[i].kind == TOKEN_NUMBER)) {
            return tokens_have(tokens, sounds) && !tokens_have(tokens, asks);
        }
    }
    return false;
}

/* What is not in our tables is a person's to look up; with an alarm, at once. */
static bool
ask_person(const struct asked *asked, struct verdict *verdict)
{
    bool sounds = quotes_with_alarm(asked) || comes_again(asked);

    if (!(sounds || quotes_unknown(asked)) || tokens_have(&asked->tokens, supposed)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, id_display)->text =
        say(asked->arena, asked->context->house, asked->language, SAY_TROUBLE_OTHER, NULL);
    verdict_alert(verdict, sounds ? ALERT_URGENT : ALERT_OFFICE, sounds, "trouble:display",
                  "display, unknown word");
    return true;
}

bool
display_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    enum trouble trouble = equipment_trouble_told(asked);
    const struct alarm *alarm;
    struct answer *answer;
    bool other;

    if (power_asks_how_long(asked)) {
        return false;
    }
    alarm = shown_by_any(asked, &other);
    if (alarm == NULL && trouble != TROUBLE_STOPPED && trouble != TROUBLE_DANGER &&
        asked_is_active_renter(asked) && ask_person(asked, verdict)) {
        return true;
    }
    if (alarm == NULL && asked_in_message(asked) && display_is_word(asked, asked->message->text)) {
        return true; /* "display:", and the word is the next piece */
    }
    if (alarm == NULL || (!asked_is_active_renter(asked) && !is_only_word(asked))) {
        return trouble == TROUBLE_NONE && tell_page(asked, verdict, alarm != NULL);
    }
    if (trouble == TROUBLE_STOPPED || trouble == TROUBLE_DANGER) {
        return equipment_trouble_decide(asked, verdict); /* graver than what the display tells */
    }
    call_staff(asked, verdict, alarm, other);
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, NULL);
        return true;
    }
    answer = verdict_add(verdict, ANSWER_TOPIC,
                         alarm->oxygen_stops ? ROUTE_EQUIPMENT : ROUTE_ANSWER, id_display);
    answer->text =
        other && asked_is_active_renter(asked)
            ? say(asked->arena, house, asked->language, SAY_TROUBLE_OTHER, NULL)
            : say(asked->arena, house, asked->language,
                  verdict->alert.level >= ALERT_URGENT ? SAY_DISPLAY_URGENT : SAY_DISPLAY,
                  alarm->shows, meaning_of(asked, alarm), NULL);
    return true;
}
