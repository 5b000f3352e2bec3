/*
 * An oximeter's value told after a low one: "94 not 84", "it was on the wrong finger, its 96". It
 * takes the low one back only if nothing but values was told of the same person, and if what made
 * it read low is told or the value before was as good: one good value right after a low one is a
 * finger that bounces.
 */
#include <string.h>

#include "emergency.h"
#include "found.h"
#include "is_over_words.h"
#include "persons.h"
#include "steps.h"
#include "yes_no.h"

/* One person each, by all their names. */
static const char *const kin[] = {" mom moms mommy mum mums mummy mother mothers mama mami madre ",
                                  " dad dads daddy father fathers papa papi padre ",
                                  " wife wifes esposa mujer senora ",
                                  " husband husbands hubby esposo marido senor ",
                                  " grandma grandmas grandmother gran granny nana abuela abuelita ",
                                  " grandpa grandpas grandfather gramps abuelo abuelito ",
                                  " aunt auntie tia ",
                                  " uncle tio ",
                                  " sister hermana ",
                                  " brother hermano ",
                                  " daughter hija ",
                                  " son hijo ",
                                  " partner friend baby bebe amigo amiga suegro suegra "};
enum { KIN = sizeof kin / sizeof kin[0] };
static const char women[] = " she shes her hers ella mom moms mother mama wife esposa sister "
                            "hermana grandma abuela abuelita aunt tia daughter hija ";
static const char men[] = " he hes him his dad dads father papa husband esposo brother hermano "
                          "grandpa abuelo abuelito uncle tio hijo ";
static const char selves[] = " i im ive my mine me mi tengo estoy yo ";

struct persons {
    unsigned kin; /* a bit each */
    bool woman, man, self;
};

static unsigned
kin_at(const struct tokens *tokens, size_t at)
{
    unsigned bits = 0;
    size_t i;

    for (i = 0; i < KIN; i++) {
        bits |= token_among(tokens, at, kin[i]) ? 1U << i : 0U;
    }
    return bits;
}

static void
add_persons(struct persons *persons, const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        persons->kin |= kin_at(tokens, i);
        persons->woman = persons->woman || token_among(tokens, i, women);
        persons->man = persons->man || token_among(tokens, i, men);
        /* "my mom" is no "my" */
        persons->self =
            persons->self || (token_among(tokens, i, selves) && kin_at(tokens, i + 1) == 0);
    }
}

/* Of whom the texts of the last minutes tell. */
static struct persons
persons_before(const struct asked *asked)
{
    struct persons persons = {0};
    size_t i;

    for (i = 0; i < asked->context->recent_count; i++) {
        struct tokens tokens = tokens_read(asked->arena, asked->context->recent[i].text);

        add_persons(&persons, &tokens);
    }
    return persons;
}

bool
is_over_of_another(const struct asked *asked)
{
    struct persons before = persons_before(asked), now = {0};

    add_persons(&now, &asked->tokens);
    return before.kin != 0 && (now.kin & ~before.kin) != 0;
}

bool
is_over_was_of_another(const struct asked *asked)
{
    static const char *const of_others[] = {"unresponsive"};
    struct persons told = {0};
    bool names_other = false;
    size_t i, j;

    for (i = 0; i < asked->context->alert_count; i++) {
        const char *texts = asked->context->alerts[i].grave_texts;
        struct tokens tokens = tokens_read(asked->arena, texts == NULL ? "" : texts);

        add_persons(&told, &tokens);
        for (j = 0; j < tokens.count; j++) {
            names_other = names_other || token_among(&tokens, j, person_words) ||
                          token_among(&tokens, j, " le les ");
        }
    }
    return names_other || told.kin != 0 || told.woman || told.man ||
           (!told.self && found_alerted_of(asked->context, of_others, 1)); /* cannot write */
}

/* A value is told by numbers alone, so whose it is must not be in doubt: whoever is named now was
 * named before, and of two nobody knows which is meant. */
static bool
is_of_same_person(const struct asked *asked)
{
    struct persons before = persons_before(asked), now = {0};
    bool of_others = before.kin != 0 || before.woman || before.man;

    add_persons(&now, &asked->tokens);
    if ((before.kin & (before.kin - 1)) != 0 || (now.kin & ~before.kin) != 0) {
        return false;
    }
    return !(now.woman && (before.man || (before.self && !of_others))) &&
           !(now.man && (before.woman || (before.self && !of_others))) &&
           !(now.self && now.kin == 0 && (of_others || !before.self));
}

/* An alert that is open was told with this value: "reading 84". */
static bool
was_told_before(const struct asked *asked, int value)
{
    enum { THOUSAND = 1000 };
    size_t i, j;

    for (i = 0; i < asked->context->alert_count; i++) {
        struct tokens brief = tokens_read(asked->arena, asked->context->alerts[i].brief);

        for (j = 0; j < brief.count; j++) {
            if (brief.list[j].kind == TOKEN_NUMBER &&
                brief.list[j].thousandths == value * THOUSAND) {
                return true;
            }
        }
    }
    return false;
}

/*
 * "94 not 84", "94, no, 84", or with "typo" one number alone: the value that holds; 0 if none is
 * told so. Of two with "no" between them the first holds only if the second stands right behind it
 * and is what was told before: "94 no 84". All else puts the first right.
 */
static int
value_put_right(const struct asked *asked)
{
    enum { THOUSAND = 1000 };
    const struct tokens *tokens = &asked->tokens;
    bool was_wrong = tokens_have(tokens, "meant|typo|misread|quise decir|lei mal|me equivoque");
    size_t count = 0, denial = 0, numbers[2] = {0, 0}, i;
    int values[2] = {0, 0};

    for (i = 0; i < tokens->count; i++) {
        if (yes_no_denies_at(tokens, i)) {
            if (count == 0) {
                return 0; /* "not 94 but 84" */
            }
            denial = count == 1 ? i : denial;
        }
        if (tokens->list[i].kind == TOKEN_NUMBER && count++ < 2) {
            numbers[count - 1] = i;
            values[count - 1] = tokens->list[i].thousandths / THOUSAND;
        }
    }
    if (count == 2 && denial > 0) {
        return denial == numbers[0] + 1 && numbers[1] == denial + 1 &&
                       was_told_before(asked, values[1])
                   ? values[0]
                   : values[1];
    }
    return count == 1 && was_wrong && denial == 0 ? values[0] : 0;
}

/* The value by which they put right a reading that staff were alerted of; 0 if the text is none of
 * that alone. */
static int
reading_put_right(const struct asked *asked)
{
    static const char *const readings[] = {"low-reading", "reading", "reading-and-symptom"};
    struct tokens rest = tokens_without(
        asked->arena, &asked->tokens,
        "not|no|meant|i mean|typo|misread|read it wrong|wrong|quise decir|digo|"
        "lei mal|me equivoque|era|eran|fue|was|percent|por ciento|wait|espere|actually|"
        "really|is|at|in fact|correction|de hecho|en realidad|tiene|marca");

    return tokens_words_among(&rest, around) &&
                   found_alerted_of(asked->context, readings, sizeof readings / sizeof readings[0])
               ? value_put_right(asked)
               : 0;
}

/* A value that is no cause to call, and well above those that a low one bounces to. */
static bool
is_well(const struct asked *asked, int value)
{
    enum { WELL = 94, MOST = 100 };

    return value >= WELL && value <= MOST && value > emergency_reading(asked->context);
}

static bool
is_reason(const char *reason, const char *told)
{
    size_t length = strlen(told);

    return strncmp(reason, told, length) == 0 &&
           (reason[length] == ',' || reason[length] == '\0' || told[length - 1] == ':');
}

static bool
is_one_of(const char *reason, const char *const *told, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (is_reason(reason, told[i])) {
            return true;
        }
    }
    return false;
}

/* Nothing but values was told of them: no trouble of the unit, nothing that they feel, and nothing
 * beside the value in its own text, of which an alert has the gravest only. */
static bool
only_readings_told(const struct asked *asked)
{
    static const char *const of_readings[] = {"sign:low-reading", "sign:reading",
                                              "sign:low-oxygen"};
    static const char *const of_office[] = {IS_OVER_REASON, "wrote-again", "introduces", "gap",
                                            "office:"};
    size_t i, count = 0;

    for (i = 0; i < asked->context->alert_count; i++) {
        const char *reason = asked->context->alerts[i].reasons;

        if (strstr(asked->context->alerts[i].brief, WITH_SYMPTOM) != NULL) {
            return false;
        }
        while (reason != NULL) {
            bool is_of_reading =
                is_one_of(reason, of_readings, sizeof of_readings / sizeof of_readings[0]);

            if (!is_of_reading &&
                !is_one_of(reason, of_office, sizeof of_office / sizeof of_office[0])) {
                return false;
            }
            count += is_of_reading;
            reason = strchr(reason, ',');
            reason += reason != NULL;
        }
    }
    for (i = 0; i < asked->context->recent_count; i++) {
        if (found_beside_value(asked, asked->context->recent[i].text)) {
            return false;
        }
    }
    return count > 0;
}

/* The value that a text tells alone; 0 if it tells none, several, or anything beside it. */
static int
value_alone(const struct tokens *tokens)
{
    enum { THOUSAND = 1000 };
    static const char of_value[] =
        " it its the was is on at up to back went came now again ok okay good sorry thanks god he "
        "hes she shes my his her him mom dad oxygen o2 sat sats spo2 level reading reads says "
        "finger oximeter and so percent ya esta en el la su mi de subio ahora ahorita oxigeno "
        "saturacion gracias a dios dedo marca dice por ciento perdon era es y "
        "estaba puesto ";
    size_t i, count = 0;
    int value = 0;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER) {
            value = tokens->list[i].thousandths / THOUSAND;
            count++;
        }
    }
    return count == 1 && tokens_words_among(tokens, of_value) ? value : 0;
}

/* The value that they told last, minutes ago, is a good one, so this is the second. */
static bool
was_well_before(const struct asked *asked)
{
    size_t i;

    for (i = asked->context->recent_count; i > 0; i--) {
        struct tokens tokens = tokens_read(asked->arena, asked->context->recent[i - 1].text);

        if (value_alone(&tokens) > 0) {
            return is_well(asked, value_alone(&tokens));
        }
    }
    return false;
}

bool
is_over_reads_well(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, harmless);

    /* After a reading that was no emergency another one is a reading, which we do not judge. */
    return open_emergency_stands(asked->context) && is_well(asked, value_alone(&rest)) &&
           (rest.count < asked->tokens.count || was_well_before(asked)) &&
           is_of_same_person(asked) && only_readings_told(asked);
}

/* "Sorry, 94 not 84": what was told as a low reading is none. */
bool
is_over_corrects_reading(const struct asked *asked)
{
    return is_well(asked, reading_put_right(asked));
}

int
is_over_still_low(const struct asked *asked)
{
    enum { LEAST = 30 };
    int value = reading_put_right(asked);

    return value >= LEAST && value <= emergency_reading(asked->context) ? value : 0;
}
