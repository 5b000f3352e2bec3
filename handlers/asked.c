#include "asked.h"

#include <string.h>

#include "lexicon.h"
#include "memory.h"
#include "mending.h"

static bool
is_active(const struct context *context, size_t at)
{
    return rental_is_active(&context->rentals[at]);
}

static size_t
active_count(const struct context *context, size_t *first)
{
    size_t count = 0, i;

    for (i = 0; i < context->rental_count; i++) {
        if (is_active(context, i)) {
            if (count == 0) {
                *first = i;
            }
            count++;
        }
    }
    return count;
}

void
asked_choose_rental(struct asked *asked, const struct rental *rental)
{
    size_t at = (size_t)(rental - asked->context->rentals);

    asked->rental = rental;
    asked->account = &asked->context->accounts[at];
    asked->equipment = rental->unit == NULL ? NULL : kb_equipment(asked->context->kb, rental->unit);
    asked->which_rental = false;
}

/*
 * "Will", "May" and "Brook" are ordinary words as well, so a name counts only where a name stands:
 * as the answer to "Which rental?", or between words that a name goes with.
 */
static const char before_a_name[] = " for of about its im soy para de llamo ";
static const char before_is[] = " this it name here ";
static const char before_a_unit[] = " the for of with my on his her el la del con mi su ";
static const char begins_clause[] = " and but so y pero hi hello hey hola ok , . ! ? - ";
static const char after_a_name[] = " has is was had cant cannot isnt needs wants feels says said "
                                   "tiene esta dice siente necesita ";
/* "Thessa. I have 2 full": the name stands by itself before what is said. */
static const char after_addressed[] = " . , : ; - ";
static const char owned[] = " battery batteries machine unit concentrator rental oxygen o2 tank "
                            "tube cannula is has due one ";
/* What may stand around the answer to "Which rental?" without saying anything else. */
static const char around_an_answer[] =
    " the its it is im this for of to one please pls thanks thank you i mean meant want hi yes ok "
    "number no rental unit machine my wife wifes husband husbands mom moms dad dads mother father "
    "es el la de del para por favor numero mi soy first second primero primera segundo segunda # ";

/* Nothing but what `at` says answers the question. */
static bool
is_whole_answer(const struct asked *asked, size_t at)
{
    size_t i;

    for (i = 0; i < asked->tokens.count; i++) {
        if (i != at && asked->tokens.list[i].kind != TOKEN_SIGN &&
            !token_among(&asked->tokens, i, around_an_answer)) {
            return false;
        }
    }
    return asked_open_question(asked) == QUESTION_WHICH_RENTAL;
}

static bool
stands_as_name(const struct asked *asked, size_t at)
{
    const struct tokens *tokens = &asked->tokens;
    bool begins = at == 0 || token_among(tokens, at - 1, begins_clause);

    return is_whole_answer(asked, at) || (at > 0 && token_among(tokens, at - 1, before_a_name)) ||
           (at > 1 && token_is(tokens, at - 1, "is") && token_among(tokens, at - 2, before_is)) ||
           (at == 0 && token_among(tokens, 1, after_addressed)) ||
           (begins && token_among(tokens, at + 1, after_a_name));
}

static bool
stands_as_unit(const struct asked *asked, size_t at)
{
    return is_whole_answer(asked, at) ||
           (at > 0 && token_among(&asked->tokens, at - 1, before_a_unit));
}

/* "Thessa's", or "thessas battery" without the mark. */
static bool
is_owner(const struct asked *asked, size_t at)
{
    const struct token *token = &asked->tokens.list[at];
    const char *written =
        memory_copy_n(asked->arena, asked->text + token->start, token->end - token->start);

    return strchr(written, '\'') != NULL || strstr(written, "\u2019") != NULL ||
           is_whole_answer(asked, at) || token_among(&asked->tokens, at + 1, owned);
}

static bool
text_has_name(const struct asked *asked, const char *words,
              bool stands(const struct asked *asked, size_t at))
{
    struct tokens name;
    size_t at;

    if (words == NULL) {
        return false;
    }
    name = tokens_read(asked->arena, words);
    for (at = 0; name.count > 0 && at < asked->tokens.count; at++) {
        const char *text = asked->tokens.list[at].text;
        size_t length = strlen(name.list[0].text);

        if (strncmp(text, name.list[0].text, length) == 0 &&
            ((text[length] == '\0' && stands(asked, at)) ||
             (strcmp(text + length, "s") == 0 && is_owner(asked, at)))) {
            return true;
        }
    }
    return false;
}

static bool
names_rental(const struct asked *asked, const struct rental *rental)
{
    const struct equipment *unit =
        rental->unit == NULL ? NULL : kb_equipment(asked->context->kb, rental->unit);

    return text_has_name(asked, rental->first_name, stands_as_name) ||
           (unit != NULL && text_has_name(asked, unit->name, stands_as_unit));
}

bool
asked_says_only_which(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < asked->tokens.count; i++) {
        if (is_whole_answer(asked, i)) {
            return true;
        }
    }
    return false;
}

/* "2", "number 2 please", "the second one": the place in our list; 0 if none is told. */
static int
number_answered(const struct asked *asked)
{
    size_t i;

    for (i = 0; i < asked->tokens.count; i++) {
        int thousandths = 0;

        if (token_among(&asked->tokens, i, " first primero primera ")) {
            thousandths = 1000;
        } else if (token_among(&asked->tokens, i, " second segundo segunda ")) {
            thousandths = 2000;
        } else if ((asked->tokens.count > 1 && token_among(&asked->tokens, i, around_an_answer)) ||
                   tokens_number(&asked->tokens, i, asked->tokens.count == 1, &thousandths) != 1) {
            continue;
        }
        if (is_whole_answer(asked, i)) {
            return thousandths % 1000 == 0 ? thousandths / 1000 : 0;
        }
    }
    return 0;
}

const struct rental *
asked_named_rental(const struct asked *asked)
{
    const struct context *context = asked->context;
    const struct rental *named = NULL;
    int answered = number_answered(asked), number = 0;
    size_t i;

    for (i = 0; i < context->rental_count; i++) {
        if (!is_active(context, i)) {
            continue;
        }
        if (++number == answered) {
            return &context->rentals[i];
        }
        if (names_rental(asked, &context->rentals[i])) {
            if (named != NULL) {
                return NULL;
            }
            named = &context->rentals[i];
        }
    }
    return named;
}

static bool
has_fallen_silent(const struct context *context, int64_t since_utc_s)
{
    return context->now_utc_s - since_utc_s > context->house->conversation_s;
}

enum open_question
asked_open_question(const struct asked *asked)
{
    const struct conversation *conversation = &asked->context->conversation;

    return has_fallen_silent(asked->context, conversation->asked_utc_s) ? QUESTION_NONE
                                                                        : conversation->question;
}

bool
asked_begins_anew(const struct context *context)
{
    return has_fallen_silent(context, context->conversation.last_utc_s);
}

/* The rental that this conversation settled on earlier, if it still is active. */
static const struct rental *
chosen_rental(const struct context *context)
{
    const char *chosen = context->conversation.rental_id;
    size_t i;

    if (asked_begins_anew(context)) {
        return NULL;
    }
    for (i = 0; chosen != NULL && i < context->rental_count; i++) {
        /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a count has its list */
        if (is_active(context, i) && strcmp(context->rentals[i].rental_id, chosen) == 0) {
            return &context->rentals[i];
        }
    }
    return NULL;
}

static void
find_rental(struct asked *asked)
{
    const struct context *context = asked->context;
    const struct rental *rental = NULL;
    size_t first = 0;
    size_t count = active_count(context, &first);

    if (count == 1) {
        rental = &context->rentals[first];
    } else if (count > 1) {
        rental = asked_named_rental(asked);
        if (rental == NULL) {
            rental = chosen_rental(context);
        }
        asked->which_rental = rental == NULL;
    }
    if (rental != NULL) {
        asked_choose_rental(asked, rental);
    }
}

/* A word or two of English may be loans ("battery", "ok thanks"): so short a text tells only that
 * they speak Spanish. */
static bool
tells_language(const struct asked *asked, const char *text, enum language *language)
{
    enum { SHORT_TEXT = 3 };
    enum language told;

    if (!words_tell_language(asked->arena, text, &told) ||
        (told == LANGUAGE_EN && tokens_read(asked->arena, text).count < SHORT_TEXT)) {
        return false;
    }
    *language = told;
    return true;
}

static enum language
of_figures(const struct asked *asked)
{
    size_t i = 0;

    while (i < asked->tokens.count && asked->tokens.list[i].kind != TOKEN_NUMBER) {
        i++;
    }
    return i == asked->tokens.count ? LANGUAGE_EN
                                    : lexicon_language(asked->context->lexicon, asked->arena,
                                                       asked->text, &asked->tokens);
}

/* What the conversation is held in: by the newest text that tells, else by the one that made us
 * ask, else as we answered last, else as the record has it; from a stranger also by the words for
 * figures and units: "E, 1500 psi, 2 litros". */
static enum language
language_so_far(const struct asked *asked)
{
    const struct context *context = asked->context;
    enum language told = asked->rental != NULL ? asked->rental->language : of_figures(asked);
    bool is_by_figures = asked->rental == NULL && told == LANGUAGE_ES;
    size_t i;

    if (context->conversation.is_spoken && !is_by_figures) {
        told = context->conversation.language;
    }
    for (i = context->recent_count; i > 0; i--) {
        if (tells_language(asked, context->recent[i - 1].text, &told)) {
            return told;
        }
    }
    if (asked_open_question(asked) != QUESTION_NONE && context->conversation.asked_about != NULL) {
        (void)tells_language(asked, context->conversation.asked_about, &told);
    }
    return told;
}

/* "Convulsiona": no common word, but one that only Spanish has. What answers a question of ours may
 * be a name. */
static bool
is_spanish_by_its_words(const struct asked *asked)
{
    enum language told;

    return asked_open_question(asked) == QUESTION_NONE &&
           !words_tell_language(asked->arena, asked->text, &told) &&
           kb_tells_language(asked->context->kb, asked->text, &told) && told == LANGUAGE_ES;
}

/* The text's own language; one too short to tell, or that does not, goes on in that of before. */
static enum language
language_of(const struct asked *asked)
{
    enum language told;

    if (tells_language(asked, asked->text, &told)) {
        return told;
    }
    return is_spanish_by_its_words(asked) ? LANGUAGE_ES : language_so_far(asked);
}

static const struct told *
read_told(void *arena, const struct lexicon *lexicon, const char *text)
{
    struct told *told = memory_new(arena, struct told);

    told_read(arena, lexicon, text, told);
    return told;
}

/* Words for what runs out that the reader's tables do not know: "se acavo", as the content has it.
 */
static void
mend_by_content(const struct asked *asked, const char *text, enum language language,
                struct tokens *tokens)
{
    const struct kb *kb = asked->context->kb;
    struct words words = kb_repaired(kb, asked->arena, asked->context->workspace, text, language);
    enum { SHORTEST = 5 };
    size_t at = 0, i;

    for (i = 0; i < words.count; i++) {
        const struct word *word = &words.list[i];
        struct token *token;

        while (at < tokens->count && tokens->list[at].start < word->start) {
            at++;
        }
        token = &tokens->list[at];
        if (at < tokens->count && token->start == word->start && token->end == word->end &&
            token->kind == TOKEN_WORD && strlen(token->text) >= SHORTEST &&
            emptied_is_word(word->text) && !kb_is_ordinary(kb, token->text, language)) {
            token->text = word->text;
        }
    }
}

static struct tokens
mended(const struct asked *asked, const char *text)
{
    const struct lexicon *lexicon = asked->context->lexicon;
    struct tokens tokens = tokens_read(asked->arena, text);
    enum language language = lexicon_language(lexicon, asked->arena, text, &tokens);

    mend_by_content(asked, text, language, &tokens);
    (void)mend_words(asked->arena, lexicon, language, &tokens);
    return tokens;
}

/* What the whole message tells beside it counts too: "murio la bateria. ya la puse a cargar". */
static struct emptied
read_emptied(const struct asked *asked)
{
    struct tokens piece = mended(asked, asked->text);

    return emptied_read(&piece, asked_in_message(asked) ? &asked->mended : &piece);
}

void
asked_set_text(struct asked *asked, const char *text)
{
    asked->text = text;
    asked->tokens = tokens_read(asked->arena, text);
    asked->emptied = read_emptied(asked);
}

struct asked
asked_whole(void *arena, const struct message *message, const struct context *context)
{
    struct asked asked = {.arena = arena,
                          .message = message,
                          .context = context,
                          .text = message->text,
                          .heard = memory_new(arena, struct heard),
                          .wrote_utc_s = message->sent_utc_s};

    asked.tokens = tokens_read(arena, message->text);
    asked.told = read_told(arena, context->lexicon, message->text);
    asked.message_told = asked.told;
    asked.mended = mended(&asked, message->text);
    asked.emptied = emptied_read(&asked.mended, &asked.mended);
    find_rental(&asked);
    asked.language = language_of(&asked);
    return asked;
}

/*
 * "I am not short of breath, only curious what the light is": what is said to be well says nothing
 * of what is asked. NULL if the text has no such beginning.
 */
static const char *
behind_disclaimer(const struct asked *asked)
{
    static const char well[] = " no not nobody none isnt arent aint nothing without fine ok okay "
                               "good well bien nada nadie sin tampoco ";
    static const char leads[] =
        "just wondering|just curious|only curious|only wondering|only want to know|"
        "just want to know|just wanted to know|only wanted to know|only need to know|"
        "just need to know|simply want to know|only asking|just asking|only want|simply want|"
        "only wants to know|only asks|just asks|solo quiero saber|nomas quiero saber|"
        "solo queria saber|nada mas quiero saber|solo quisiera saber|solo pregunto|"
        "nomas pregunto|solo preguntaba";
    const struct tokens *tokens = &asked->tokens;
    bool is_well = false;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        size_t lead = is_well ? tokens_phrase_at(tokens, i, leads) : 0;

        if (lead > 0 && i + lead < tokens->count) {
            return asked->text + tokens->list[i + lead].start;
        }
        is_well = is_well || token_among(tokens, i, well);
    }
    return NULL;
}

/* The rest alone, if that is surely of a topic. */
static void
search_behind_disclaimer(struct asked *asked)
{
    const char *rest = behind_disclaimer(asked);
    struct topic_search found;

    if (rest == NULL) {
        return;
    }
    found = kb_search_topics(asked->context->kb, asked->context->workspace, rest, asked->language);
    if (found.sureness == SURE) {
        asked->search = found;
    }
}

struct asked
asked_question(const struct asked *whole, const char *text, int64_t wrote_utc_s)
{
    struct asked asked = *whole;

    asked.wrote_utc_s = wrote_utc_s;
    if (strcmp(text, whole->text) != 0) {
        asked_set_text(&asked, text);
        asked.told = strcmp(text, whole->message->text) == 0
                         ? whole->message_told
                         : read_told(whole->arena, whole->context->lexicon, text);
    }
    asked.search =
        kb_search_topics(whole->context->kb, whole->context->workspace, text, whole->language);
    search_behind_disclaimer(&asked);
    return asked;
}

bool
asked_in_message(const struct asked *asked)
{
    return strstr(asked->message->text, asked->text) != NULL;
}

bool
asked_is_surely_about(const struct asked *asked, const char *topic)
{
    return asked->search.count > 0 && asked->search.sureness == SURE &&
           strcmp(asked->search.best[0].topic->id, topic) == 0;
}

bool
asked_is_active_renter(const struct asked *asked)
{
    size_t first;

    return active_count(asked->context, &first) > 0;
}
