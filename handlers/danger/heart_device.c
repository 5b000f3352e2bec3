#include "heart_device.h"

#include "clause.h"

static const char devices[] =
    "defib|defibs|defibrillator|defibrilator|icd|cardioverter|lifevest|life vest|pacemaker|"
    "pace maker|desfibrilador|desfribilador|defibrilador|marcapasos|marcapaso|dai";
/* Of nothing but a current, and a vest that gives one. */
static const char currents[] =
    "shock|shocks|shocked|shocking|zapped|zaps|zapping|zap|discharged|descarga|descargas|descargo";
/* Cars, horses and alarms do these as well: they count right beside the device, "icd went off". */
static const char blows[] =
    "went off|goes off|going off|gone off|set off|fired|fires|firing|kick|kicks|kicked|jolt|jolts|"
    "jolted|choque|choques|disparo|disparado|se activo|se prendio|pateo|patada|patadas|toque|"
    "toques|sacudio|calambre|calambres";
/* What may stand between a blow and the device that gave it. */
static const char between[] =
    " just has had have having is was keeps keep kept again it thing finally already really think "
    "in chest implanted a an the my his her your our me him us of from by twice two three four few "
    "big hard se le les lo la nos el su mi mis tu de del por dio dieron da dando pego pega metio "
    "un una unos unas dos tres cuatro ya otra vez varias varios fuerte ";
/* What else gives a shock. */
static const char others[] = " unit machine concentrator outlet plug cord cable wall fence wire "
                             "charger socket light lamp lightning maquina aparato equipo "
                             "concentrador enchufe contacto cable cargador cerca rayo lampara ";
static const char several[] =
    "twice|again|shocks|keeps|kept|keep|several|multiple|many|few|couple|times|another|"
    "over and over|nonstop|wont stop|cant stop|all night|all day|dos|tres|cuatro|cinco|varias|"
    "varios|muchas|veces|otra|de nuevo|descargas|choques|toques|patadas|jolts|no para|seguidas";
static const char of_time[] =
    " am pm hour hours hr hrs day days min mins minute minutes week weeks "
    "oclock hora horas dia dias minutos semanas ";
/* Of when, whose or whether. */
static const char supposed[] = "if|what if|will it|will the|can it|could it|would|does it|does the|"
                               "airport|magnet|on the wall|wall|have a defibrillator|in the lobby|"
                               "training|class|si mi|si el|si le|puede|podria|pared|que pasa si|"
                               "interfere|interfiere|afecta|affect";
static const char long_ago[] = "year ago|years ago|last year|months ago|last month|weeks ago|"
                               "used to|hace un ano|hace anos|hace meses|el ano pasado|"
                               "el mes pasado|hace semanas";

enum { REACH = 8 };

/* "Hasnt gone off", "no shocks". */
static bool
is_denied(const struct tokens *tokens, size_t at)
{
    enum { BEFORE = 3 };

    return clause_denies(tokens, (struct clause){tokens_back(at, BEFORE), at});
}

/* Of what is told at `at`; words that are of another thing come between. */
static bool
is_by_device(const struct tokens *tokens, size_t at, size_t words)
{
    size_t i = at, end = at + words;

    while (i > 0 && token_among(tokens, i - 1, between)) {
        i--;
    }
    while (token_among(tokens, end, between)) {
        end++;
    }
    return (i > 0 && (tokens_phrase_at(tokens, i - 1, devices) > 0 ||
                      (i > 1 && tokens_phrase_at(tokens, i - 2, devices) > 1))) ||
           tokens_phrase_at(tokens, end, devices) > 0;
}

static size_t
distance(size_t one, size_t other)
{
    return one < other ? other - one : one - other;
}

/* A device is spoken of nearby, and in this clause nothing else that may give a shock is nearer. */
static bool
is_near_device(const struct tokens *tokens, size_t at)
{
    const struct clause clause = clause_around(tokens, at);
    size_t device = REACH + 1, other = REACH + 1, i;

    for (i = tokens_back(at, REACH); i <= at + REACH && i < tokens->count; i++) {
        size_t far = distance(i, at);

        if (tokens_phrase_at(tokens, i, devices) > 0 && far < device) {
            device = far;
        }
        if (i >= clause.from && i < clause.end && token_among(tokens, i, others) && far < other) {
            other = far;
        }
    }
    return device <= REACH && device < other;
}

/* "Went off twice", "3 times", but not "at 3"; or in a next clause that begins with it. */
static bool
are_several(const struct tokens *tokens, struct clause clause)
{
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        if (tokens->list[i].kind == TOKEN_NUMBER && tokens->list[i].thousandths > 1000 &&
            !(i > 0 && token_among(tokens, i - 1, " at las setting room ")) &&
            !token_is(tokens, i + 1, ":") && !token_among(tokens, i + 1, of_time)) {
            return true;
        }
    }
    return clause_tells(tokens, clause, several) ||
           tokens_phrase_at(tokens, clause.end + 1, several) > 0;
}

struct heart_shock
heart_shock_told(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        size_t blow = tokens_phrase_at(tokens, i, blows);
        size_t current = tokens_phrase_at(tokens, i, currents);
        struct clause clause = clause_around(tokens, i);

        if (((blow + current > 0 && is_by_device(tokens, i, blow + current)) ||
             (current > 0 && is_near_device(tokens, i))) &&
            !is_denied(tokens, i) && !clause_tells(tokens, clause, supposed) &&
            !clause_tells(tokens, clause, long_ago)) {
            return (struct heart_shock){.often = are_several(tokens, clause) ? SHOCKED_SEVERAL_TIMES
                                                                             : SHOCKED_ONCE,
                                        .clause = clause,
                                        .at = i,
                                        .end = i + blow + current};
        }
    }
    return (struct heart_shock){.often = NOT_SHOCKED};
}
