#include "last_cylinder.h"

#include <string.h>

#include "cylinder.h"

enum { TOO_LITTLE_MIN = 30, FLOW_UNKNOWN_TENTHS = 20, THOUSAND = 1000 };

/* ---- the gauge ------------------------------------------------------------------------------ */

static const char tanks[] = " tank tanks cylinder cylinders cyl bottle backup gauge needle psi "
                            "tanque tanques cilindro cilindros botella reserva respaldo manometro "
                            "aguja libras ";
/* A number behind or before one of these is what is left. */
static const char leads[] = " at on says reads shows has have got with to only just about like is "
                            "its now quedan queda tiene marca dice en a con esta trae solo nomas ";
static const char follows[] = " left psi lbs pounds libras remaining mas , . ! ";
static const char other_units[] =
    " % percent min mins minute minutes hour hours hr hrs h feet foot ft mile miles watt watts w "
    "dollars bucks light lights bar bars am pm days day minutos horas pies millas dolares cuadras ";

/* "200 left", "at 300": as a gauge is read aloud, in psi. 0 if there is none. */
static int
bare_gauge(const struct tokens *tokens)
{
    enum { LEAST = 101, MOST = 2500 }; /* less may be a percentage */
    size_t i, taken;
    int thousandths;

    for (i = 0; i < tokens->count; i += taken) {
        taken = tokens_number(tokens, i, false, &thousandths);
        if (taken == 0) {
            taken = 1;
            continue;
        }
        if (thousandths % (5 * THOUSAND) == 0 && thousandths >= LEAST * THOUSAND &&
            thousandths <= MOST * THOUSAND && !token_among(tokens, i + taken, other_units) &&
            ((i > 0 && token_among(tokens, i - 1, leads)) ||
             token_among(tokens, i + taken, follows))) {
            return thousandths / THOUSAND;
        }
    }
    return 0;
}

static bool
names_cylinder(const struct asked *whole, const char *text)
{
    const struct tokens tokens = tokens_read(whole->arena, text);
    struct told told;

    if (tokens_any_among(&tokens, 0, tanks)) {
        return true;
    }
    told_read(whole->arena, whole->context->lexicon, text, &told);
    return told.size[0] != '\0';
}

/* Here, just before, or in what we asked back about. */
static bool
speaks_of_cylinder(const struct asked *whole)
{
    const struct context *context = whole->context;
    const char *asked_about = context->conversation.asked_about;
    const struct last_answer *last = &context->conversation.last;
    bool is_named = names_cylinder(whole, whole->text);
    size_t i;

    for (i = 0; i < context->recent_count; i++) {
        is_named = is_named || names_cylinder(whole, context->recent[i].text);
    }
    if (is_named || asked_begins_anew(context)) {
        return is_named;
    }
    return (asked_about != NULL && names_cylinder(whole, asked_about)) ||
           (last->is_sum && last->told.kind == TOLD_CYLINDER);
}

/* ---- how long ------------------------------------------------------------------------------- */

static const char *
size_of(const struct asked *whole)
{
    const struct rental *rental = whole->rental;

    if (whole->told->size[0] != '\0') {
        return whole->told->size;
    }
    return rental != NULL && rental->backup.known && rental->backup.size != NULL
               ? rental->backup.size
               : "D";
}

static int
flow_of(const struct asked *whole)
{
    const struct rental *rental = whole->rental;

    if (whole->told->flow_tenths > 0) {
        return whole->told->flow_tenths;
    }
    return rental != NULL && rental->backup.known && rental->backup.flow_tenths > 0
               ? rental->backup.flow_tenths
               : FLOW_UNKNOWN_TENTHS;
}

static bool
is_too_little(const struct asked *whole, struct psi pressure)
{
    int factor = cylinder_factor(size_of(whole)), flow = flow_of(whole);

    if (flow > CYLINDER_FLOW_TENTHS_MAX) {
        flow = CYLINDER_FLOW_TENTHS_MAX;
    }
    return cylinder_time(factor > 0 ? factor : cylinder_factor("D"), pressure, flow).low <
           TOO_LITTLE_MIN;
}

bool
last_cylinder_ends(const struct asked *whole)
{
    static const char another[] =
        "another|other one|second tank|second cylinder|spare tank|spare cylinder|extra tank|"
        "2 tanks|two tanks|full one|full tank|full tanks|more tanks|otro tanque|otro cilindro|"
        "tanque lleno|cilindro lleno|dos tanques|2 tanques|de repuesto";
    static const char supposed[] = "if|what if|would|could|suppose|in case|cuando|en caso|si se";
    const struct tokens *tokens = &whole->tokens;
    const struct told *told = whole->told;
    int bare;

    if (tokens_have(tokens, another) || tokens_have(tokens, supposed) || told->impossible) {
        return false;
    }
    if (told->psi > 0) {
        return is_too_little(whole, cylinder_gauge(told->psi));
    }
    if (told->bar > 0) {
        return is_too_little(whole, cylinder_gauge_bar(told->bar));
    }
    bare = bare_gauge(tokens);
    return bare > 0 && speaks_of_cylinder(whole) && is_too_little(whole, cylinder_gauge(bare));
}
