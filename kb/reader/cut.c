/*
 * Sentences are the bricks; a sentence is cut further where a new question begins inside it ("and
 * how", "also"). Then the bricks are put together: what is no question itself belongs to the
 * question that follows it, or, after the last one, to the one before.
 */
#include "cut.h"

#include <stdint.h>
#include <string.h>

#include "memory.h"

/* ---- Words that show what a piece is --------------------------------------------------------- */

/*
 * The longest of these phrases that stands at word `at`: how many words; 0 if none does. Phrases
 * are parted by |, their words by single blanks.
 */
static size_t
longest(const struct words *words, size_t at, const char *phrases)
{
    size_t best = 0, i = at;
    bool stands = true;

    if (at >= words->count) {
        return 0;
    }
    while (*phrases != '\0') {
        size_t length;

        if (i == at && *phrases != words->list[at].text[0]) { /* most phrases end here */
            phrases = strchrnul(phrases, '|');
            phrases += *phrases != '\0';
            continue;
        }
        length = strcspn(phrases, " |");
        stands = stands && i < words->count && strlen(words->list[i].text) == length &&
                 memcmp(words->list[i].text, phrases, length) == 0;
        phrases += length;
        i++;
        if (*phrases != ' ') {
            best = stands && i - at > best ? i - at : best;
            i = at;
            stands = true;
        }
        phrases += *phrases != '\0';
    }
    return best;
}

/* The letters a to z that phrases begin with, a bit each: most words need no closer look. */
static uint32_t
first_letters(const char *phrases)
{
    uint32_t letters = 0;

    for (;;) {
        letters |= 1u << (*phrases - 'a');
        phrases = strchr(phrases, '|');
        if (phrases == NULL) {
            return letters;
        }
        phrases++;
    }
}

static bool
may_begin(const struct words *words, size_t at, uint32_t letters)
{
    char letter = words->list[at].text[0];

    return letter >= 'a' && letter <= 'z' && (letters >> (letter - 'a') & 1) != 0;
}

/* Words that begin a question, alone or after "and". */
static const char openers[] =
    "how|what|whats|where|wheres|when|whens|which|who|why|can|could|does|do|did|is|are|will|"
    "would|should|may|am|was|were|has|have we|have you|hows|whos|do i|como|que|cual|cuando|"
    "donde|cuanto|cuanta|quien|puedo|puede|hay|tengo que|es|se puede|podria|por que|cuantas|"
    "cuantos";

/* Words that say: now comes something else. */
static const char turns[] =
    "also|and also|plus|another thing|another question|one more thing|one more question|"
    "next question|second question|btw|by the way|oh and|other question|tambien|y tambien|"
    "otra cosa|otra pregunta|ademas|aparte";

static const char joiners[] = "and|n|but|then|so|y|e|pero";

/* What is asked for without asking. */
static const char requests[] =
    "give me|tell me|send me|show me|text me|remind me|let me know|let us know|please give me|"
    "please tell me|please send me|pls tell me|pls send me|deme|digame|mandeme|enviame|dime";

/* "if so give me the number", "if not can you bring one": a short condition leads over. */
static const char conditions[] = "if so|if not|if yes|if no|if|in case|otherwise|or|si no|si";
enum { CONDITION_WORDS = 5 };

/* Pleasantries that may stand alone, before or after a question. */
static const char courtesies[] =
    "hi|hello|hey|hiya|howdy|yo|dear|greetings|morning|good morning|good afternoon|"
    "good evening|good day|good night|goodnight|evening|gm|thanks|thank you|thank u|thanku|"
    "thankyou|thx|thnx|thanx|tx|tks|ty|tysm|tyvm|many thanks|much appreciated|appreciate it|"
    "appreciate you|i appreciate it|we appreciate it|appreciate your help|please|pls|plz|"
    "plse|sorry|so sorry|sorry to bother you|sorry to bother|sorry for the late text|"
    "sorry so late|sorry its late|excuse me|pardon me|quick question|quick one|question|"
    "one question|a question|i have a question|got a question|ok|okay|k|kk|great|perfect|"
    "awesome|cool|wonderful|excellent|got it|will do|sounds good|all good|no worries|"
    "no problem|np|youre welcome|you too|have a good one|have a good day|have a nice day|"
    "have a great day|have a good night|have a good evening|god bless|god bless you|"
    "bless you|bless your heart|bye|goodbye|take care|cheers|lol|haha|ha ha|xo|"
    "hope all is well|hope you are well|hope youre well|hope youre doing well|how are you|"
    "how are you today|in advance|regards|best regards|sincerely|you guys are great|"
    "youre the best|you are the best|youre a lifesaver|you have been so helpful|"
    "youve been so helpful|i was wondering|just wondering|just curious|hola|buenas|"
    "buenos dias|buen dia|buenas tardes|buenas noches|gracias|muchas gracias|mil gracias|"
    "por favor|porfa|porfavor|perdon|disculpe|disculpa|perdone|una pregunta|listo|perfecto|"
    "vale|adios|saludos|que tenga buen dia|dios le bendiga|dios los bendiga|bendiciones";

/* What may follow a pleasantry and is none by itself. */
static const char followers[] =
    "there|again|all|guys|folks|everyone|team|yall|you all|sir|maam|miss|friend|friends|"
    "so much|very much|a lot|alot|a bunch|a million|a ton|much|again so much|for your help|"
    "for the help|for all your help|for everything|for that|for the info|for the quick reply|"
    "for getting back to me|for you|for u|to you|and|then|a todos|por todo|por su ayuda|"
    "de nuevo|senor|senora|y";

/* What may end a text after its question. */
static const char closers[] =
    "thanks|thank you|thank u|thankyou|thx|thnx|thanx|tks|ty|tysm|many thanks|"
    "much appreciated|appreciate it|please|pls|plz|god bless|bless you|lol|haha|gracias|"
    "muchas gracias|por favor|porfa|saludos|have a good day|have a nice day|have a great day|"
    "have a good night";

/* Words that name nothing: a question of these alone ("is that ok", "what would you say") wants
 * no answer beside the one to what was said before it. */
static const char small_words[] =
    "a|about|advise|all|alright|am|an|and|any|are|as|at|bad|be|been|but|by|can|cant|could|did|do|"
    "does|doesnt|dont|else|explain|explaining|fine|for|from|good|guess|had|has|have|he|her|him|his|"
    "how|i|id|if|im|in|is|isnt|it|its|just|kind|know|let|like|may|me|mean|might|mind|my|n|no|"
    "normal|not|now|of|ok|okay|on|or|our|please|possible|really|recommend|right|safe|say|she|"
    "should|so|suggest|sure|tell|that|thats|the|them|then|there|these|they|thing|think|this|those|"
    "to|true|us|was|we|well|were|what|whats|which|why|will|with|wondering|worry|would|wrong|yes|"
    "you|your";

static const char names_after[] = "this is|my name is|its|it is|im|i am|soy|me llamo|habla";

/* Never a name, however it is written. */
static const char no_names[] =
    "help|oxygen|o2|urgent|emergency|stop|now|asap|dead|alarm|battery|hurry|ayuda|oxigeno|ya";

/* True if the words [from, to) name nothing. */
static bool
are_small(const struct words *words, size_t from, size_t to)
{
    while (from < to && longest(words, from, small_words) > 0) {
        from++;
    }
    return from == to;
}

/* How many words at `at` join what follows to what was before; "&" is a word of its own. */
static size_t
joins(const struct words *words, size_t at)
{
    return at < words->count && words->list[at].text[0] == '&' ? 1 : longest(words, at, joiners);
}

/* The number of a list ("1 how ... 2 can ..."), or 0. */
static int
list_number(const struct words *words, size_t at)
{
    const char *text = at < words->count ? words->list[at].text : "";

    return text[0] >= '1' && text[0] <= '9' && text[1] == '\0' ? text[0] - '0' : 0;
}

/* How many words at `at` lead over to what is asked: "also", "and", "2", "if it isnt". */
static size_t
leads_over(const struct words *words, size_t at)
{
    size_t from = at, condition, end;

    at += list_number(words, at) > 0;
    at += longest(words, at, turns);
    at += joins(words, at);
    condition = longest(words, at, conditions);
    for (end = at + condition; condition > 0 && end <= at + CONDITION_WORDS; end++) {
        if (longest(words, end, openers) > 0 || longest(words, end, requests) > 0) {
            return end - from;
        }
    }
    return at - from;
}

/* True if what begins at `at` is put as a question, whatever word leads over to it. */
static bool
opens_question(const struct words *words, size_t at)
{
    at += leads_over(words, at);
    return longest(words, at, openers) > 0 || longest(words, at, requests) > 0;
}

/* ---- One piece under way ----------------------------------------------------------------------
 */

/* Words [from, to) of the text. */
struct brick {
    size_t from, to;
    bool question, courtesy, turn;
};

struct cutting {
    const char *text;
    struct words words;
    uint32_t closing, leading; /* first letters of `closers`, of `turns` and `joiners` */
    bool shouted;              /* all in capitals, which then tell nothing */
    struct brick *bricks;
    size_t count;
};

static bool
is_capital(const struct cutting *cutting, size_t word)
{
    char c = cutting->text[cutting->words.list[word].start];

    return !cutting->shouted && c >= 'A' && c <= 'Z' &&
           longest(&cutting->words, word, no_names) == 0;
}

/* "ok to sleep with it" asks: what would else be a pleasantry belongs to what follows. */
static bool
asks_leave(const struct words *words, size_t at)
{
    return longest(words, at, "ok|okay") > 0 &&
           longest(words, at + 1, "to|if|for|with|in|on") > 0 && !words->list[at + 1].comma_before;
}

/* The words of [from, to) that are pleasantries, from `from` on; at most one name after them. */
static size_t
skip_courtesy(const struct cutting *cutting, size_t from, size_t to)
{
    size_t at = from;

    while (at < to) {
        size_t count =
            asks_leave(&cutting->words, at) ? 0 : longest(&cutting->words, at, courtesies);

        if (count == 0 && at > from) {
            count = longest(&cutting->words, at, followers);
        }
        if (count == 0) {
            size_t said = longest(&cutting->words, at, names_after);

            if (said > 0 && at + said < to && to - at - said <= 2 &&
                is_capital(cutting, at + said) && is_capital(cutting, to - 1)) {
                return to; /* "this is Alma" */
            }
            if (at > from && at + 1 == to && is_capital(cutting, at)) {
                return to; /* "thanks Alma" */
            }
            if (at > from && at + 1 < to && is_capital(cutting, at) &&
                cutting->words.list[at + 1].comma_before) {
                count = 1; /* "hi Alma, ..." */
            }
        }
        if (count == 0 || at + count > to) {
            return at;
        }
        at += count;
    }
    return to;
}

/* Where the pleasantries at the end of [from, to) begin; `to` if there are none. */
static size_t
find_closing(const struct cutting *cutting, size_t from, size_t to)
{
    size_t at;

    for (at = from + 1; at < to; at++) {
        if (may_begin(&cutting->words, at, cutting->closing) &&
            longest(&cutting->words, at, closers) > 0 && skip_courtesy(cutting, at, to) == to) {
            return at;
        }
    }
    return to;
}

/* The byte after the word, or after the sentence's end marks that follow it. */
static size_t
end_of(const struct cutting *cutting, size_t word)
{
    size_t end = cutting->words.list[word].end;
    size_t limit = word + 1 < cutting->words.count ? cutting->words.list[word + 1].start
                                                   : strlen(cutting->text);

    while (end < limit && strchr(".!?%)", cutting->text[end]) != NULL) {
        end++;
    }
    return end;
}

static bool
ends_with_question_mark(const struct cutting *cutting, size_t to)
{
    size_t at = cutting->words.list[to - 1].end, end = end_of(cutting, to - 1);

    return memchr(cutting->text + at, '?', end - at) != NULL;
}

static void
add_brick(struct cutting *cutting, size_t from, size_t to, bool courtesy)
{
    struct brick *brick = &cutting->bricks[cutting->count];
    size_t turn;

    if (from == to) {
        return;
    }
    turn = longest(&cutting->words, from, turns);
    *brick = (struct brick){.from = from, .to = to, .courtesy = courtesy, .turn = turn > 0};
    brick->question = !courtesy && (ends_with_question_mark(cutting, to) ||
                                    opens_question(&cutting->words, from));
    cutting->count++;
}

/* Adds words that hold no sentence end: pleasantries, the rest, pleasantries. */
static void
add_stretch(struct cutting *cutting, size_t from, size_t to)
{
    size_t begin = skip_courtesy(cutting, from, to);
    size_t end = begin < to ? find_closing(cutting, begin, to) : to;

    add_brick(cutting, from, begin, true);
    add_brick(cutting, begin, end, false);
    add_brick(cutting, end, to, true);
}

/* True if the numbered list that begins at `from` goes on at `at`. */
static bool
continues_list(const struct cutting *cutting, size_t from, size_t at)
{
    int number = list_number(&cutting->words, from);

    return number > 0 && list_number(&cutting->words, at) == number + 1 &&
           opens_question(&cutting->words, from) && opens_question(&cutting->words, at);
}

/* True if a new question begins at word `at` inside a sentence that began at `from`. */
static bool
begins_question(const struct cutting *cutting, size_t from, size_t at, size_t to)
{
    const struct words *words = &cutting->words;
    size_t joiner, turn;

    if (at < from + 2 || at + 2 > to) {
        return false;
    }
    if (continues_list(cutting, from, at)) {
        return true;
    }
    if (!words->list[at].comma_before && words->list[at].text[0] != '&' &&
        !may_begin(words, at, cutting->leading)) {
        return false;
    }
    joiner = joins(words, at);
    turn = longest(words, at, turns);
    if (turn > 0 && (words->list[at].comma_before || joiner > 0 || at + 3 < to)) {
        return at + turn < to;
    }
    if (joiner > 0) {
        return at + joiner + 2 <= to && opens_question(words, at) &&
               (words->list[at].comma_before || opens_question(words, from));
    }
    return words->list[at].comma_before && opens_question(words, at) &&
           opens_question(words, from) && to - at >= 3;
}

static void
add_sentence(struct cutting *cutting, size_t from, size_t to)
{
    size_t begin = skip_courtesy(cutting, from, to), at;

    for (at = begin + 1; at < to; at++) {
        if (begins_question(cutting, begin, at, to)) {
            add_stretch(cutting, from, at);
            from = begin = at;
        }
    }
    add_stretch(cutting, from, to);
}

static void
lay_bricks(struct cutting *cutting)
{
    size_t from = 0, at;

    for (at = 1; at <= cutting->words.count; at++) {
        if (at == cutting->words.count ||
            cutting->words.list[at].sentence != cutting->words.list[at - 1].sentence) {
            add_sentence(cutting, from, at);
            from = at;
        }
    }
}

/* ---- Putting together -------------------------------------------------------------------------
 */

static bool
question_follows(const struct cutting *cutting, size_t brick)
{
    for (brick++; brick < cutting->count; brick++) {
        if (cutting->bricks[brick].question) {
            return true;
        }
        if (cutting->bricks[brick].turn) {
            return false;
        }
    }
    return false;
}

/* Joins each brick that is no question to the question it belongs to; none are left between. */
static void
join_bricks(struct cutting *cutting)
{
    size_t kept = 0, i;
    bool open = false; /* the last piece still waits for its question, or takes what follows */

    for (i = 0; i < cutting->count; i++) {
        struct brick brick = cutting->bricks[i];
        struct brick *last = kept > 0 ? &cutting->bricks[kept - 1] : NULL;
        bool leads = !brick.question && question_follows(cutting, i);

        if (!brick.courtesy && last != NULL && last->question &&
            are_small(&cutting->words, brick.from, brick.to)) {
            brick.courtesy = true;
        }
        if (!brick.courtesy && open && last != NULL && !last->courtesy && !brick.turn &&
            (!last->question || (!brick.question && !leads))) {
            last->to = brick.to;
            last->question = last->question || brick.question;
            continue;
        }
        cutting->bricks[kept++] = brick;
        open = !brick.courtesy;
    }
    cutting->count = kept;
}

/* A text without a word: emoji are a courtesy, "??" is not. */
static struct pieces
wordless(void *arena, const char *text)
{
    size_t length = strnlen(text, WORDS_TEXT_MAX), start = strspn(text, " \t\r\n");
    struct piece *piece;

    if (start >= length) {
        return (struct pieces){NULL, 0};
    }
    piece = memory_new(arena, struct piece);
    piece->text = memory_copy_n(piece, text + start, length - start);
    piece->start = start;
    piece->end = length;
    piece->courtesy = memchr(text, '?', length) == NULL;
    return (struct pieces){piece, 1};
}

struct pieces
cut_questions(void *arena, const char *text, enum language language)
{
    struct cutting cutting = {.text = text, .words = words_read(arena, NULL, text, language)};
    struct piece *list;
    size_t i;

    if (cutting.words.count == 0) {
        return wordless(arena, text);
    }
    cutting.shouted = strpbrk(text, "abcdefghijklmnopqrstuvwxyz") == NULL;
    cutting.closing = first_letters(closers);
    cutting.leading = first_letters(turns) | first_letters(joiners);
    cutting.bricks = memory_array(arena, struct brick, 3 * cutting.words.count + 1);
    lay_bricks(&cutting);
    join_bricks(&cutting);
    list = memory_array(arena, struct piece, cutting.count);
    for (i = 0; i < cutting.count; i++) {
        const struct brick *brick = &cutting.bricks[i];

        list[i].start = cutting.words.list[brick->from].start;
        list[i].end = end_of(&cutting, brick->to - 1);
        list[i].text = memory_copy_n(list, text + list[i].start, list[i].end - list[i].start);
        list[i].courtesy = brick->courtesy;
    }
    return (struct pieces){list, cutting.count};
}
