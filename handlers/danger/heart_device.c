#include "heart_device.h"

#include "clause.h"

static const char devices[] =
    "defib|defibs|defibrillator|defibrilator|icd|cardioverter|lifevest|life vest|pacemaker|"
    "pace maker|desfibrilador|desfribilador|defibrilador|marcapasos|marcapaso|dai";
static const char shocks[] =
    "shock|shocks|shocked|shocking|went off|goes off|going off|gone off|set off|fired|fires|firing|"
    "zapped|zaps|zapping|zap|kicked|kicks|jolt|jolts|jolted|discharged|descarga|descargas|"
    "descargo|choque|choques|disparo|disparado|se activo|se prendio|pateo|patada|patadas|toque|"
    "toques|sacudio|calambre|calambres";
static const char several[] =
    "twice|two|three|four|five|six|2|3|4|5|6|7|8|9|10|again|shocks|keeps|kept|keep|several|"
    "multiple|"
    "many|few|couple|times|another|over and over|nonstop|wont stop|cant stop|dos|tres|cuatro|cinco|"
    "varias|varios|muchas|veces|otra|de nuevo|descargas|choques|no para|seguidas";
/* Of when, whose or whether. */
static const char supposed[] = "if|what if|will it|will the|can it|could it|would|does it|is it ok|"
                               "airport|magnet|on the wall|wall|have a defibrillator|in the lobby|"
                               "training|class|si mi|si el|si le|puede|podria|pared|que pasa si|"
                               "interfere|interfiere|afecta|affect|near my|cerca de";
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

static bool
is_near_device(const struct tokens *tokens, size_t at)
{
    size_t i;

    for (i = tokens_back(at, REACH); i <= at + REACH && i < tokens->count; i++) {
        if (tokens_phrase_at(tokens, i, devices) > 0) {
            return true;
        }
    }
    return false;
}

enum heart_shock
heart_shock_told(const struct tokens *tokens)
{
    size_t i;

    if (tokens_have(tokens, supposed) || tokens_have(tokens, long_ago)) {
        return HEART_SHOCK_NONE;
    }
    for (i = 0; i < tokens->count; i++) {
        if (tokens_phrase_at(tokens, i, shocks) > 0 && is_near_device(tokens, i) &&
            !is_denied(tokens, i)) {
            return tokens_have(tokens, several) ? HEART_SHOCK_SEVERAL : HEART_SHOCK_ONE;
        }
    }
    return HEART_SHOCK_NONE;
}
