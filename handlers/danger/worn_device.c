#include "worn_device.h"

#include "clause.h"

static const char devices[] = " watch watches smartwatch smartwatches wristwatch ring wrist "
                              "wristband armband bracelet tracker "
                              "finger fingertip clip oximeter oximetro reloj relojito anillo "
                              "pulsera muneca dedo dedito pinza "
                              "pinzita ";
static const char tells[] =
    " say says said saying show shows showed showing read reads reading alert alerts alarm alarms "
    "alarming warn warns warning buzz buzzes buzzing beep beeps beeping flash flashes flashing "
    "notification display displays on dice dijo marca marco muestra sale salio avisa aviso alarma "
    "pita pitando vibra vibrando aparece trae da ";
static const char units[] = " unit concentrator screen panel tank cylinder equipo "
                            "concentrador pantalla tanque cilindro ";
static const char low_oxygen[] =
    "low oxygen|oxygen low|oxygen is low|oxygen too low|oxygen is too low|oxygen very low|"
    "oxygen is very low|low o2|o2 low|o2 is low|low blood oxygen|low spo2|spo2 low|"
    "oxygen level low|low oxygen level|low oxygen levels|oxygen levels low|oxygen dropping|"
    "oxigeno bajo|bajo oxigeno|oxigeno muy bajo|oxigeno esta bajo|oxigeno bajito|o2 bajo|"
    "baja oxigenacion|oxigenacion baja|oxigeno en sangre bajo|oxigeno en la sangre bajo";
static const char supposed[] =
    "if|what if|in case|when it says|does it|does my|does the|can my|can "
    "the|will it|will my|would|what does|si dice|si marca|que significa|"
    "puede|cuando dice|cuando marca";

bool
worn_device_tells(const struct tokens *tokens, size_t at)
{
    struct clause clause = clause_around(tokens, at);
    bool is_worn = false;
    size_t i;

    for (i = clause.from; i < clause.end; i++) {
        is_worn = is_worn || (token_among(tokens, i, devices) &&
                              !token_among(tokens, i + 1, " out for it him her over tv "));
    }
    return is_worn && clause_has(tokens, clause, tells) && !clause_has(tokens, clause, units);
}

bool
worn_device_tells_low(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens_phrase_at(tokens, i, low_oxygen) > 0 && worn_device_tells(tokens, i)) {
            return !tokens_have(tokens, supposed);
        }
    }
    return false;
}
