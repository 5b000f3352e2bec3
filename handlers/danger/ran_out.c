/*
 * What they run on is told to be empty (emptied.h): "my battery died", "se me acabo el tanque".
 * Nobody may breathe from anything then, so a person is called and it is asked whether oxygen
 * flows, as with a unit that stopped. Where there is nothing else to breathe from, or they are on
 * the road, it is an emergency (signs.c).
 */
#include "emptied.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

enum ran_out
ran_out_told(const struct asked *asked)
{
    const struct emptied *emptied = &asked->emptied;

    if (!(emptied->tank || emptied->battery) ||
        (!emptied->nothing_else && weak_battery_told(asked))) {
        return RAN_OUT_NOTHING;
    }
    return emptied->tank ? RAN_OUT_TANK : RAN_OUT_BATTERY;
}

bool
ran_out_of_everything(const struct asked *asked)
{
    return asked->emptied.nothing_else;
}

bool
ran_out_with_somebody(const struct asked *asked)
{
    return asked->emptied.somebody_too;
}

bool
ran_out_of_backup(const struct asked *asked)
{
    static const char backups[] = " tank tanks cylinder cylinders backup tanque tanques cilindro "
                                  "cilindros reserva respaldo ";

    return yes_no_denies_one_of(&asked->tokens, backups) || ran_out_told(asked) == RAN_OUT_TANK;
}

bool
ran_out_is_all(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, emptied_words);

    return emptied_is_all(&rest) && ran_out_told(asked) != RAN_OUT_NOTHING;
}

bool
ran_out_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    enum ran_out told = ran_out_told(asked);
    bool is_tank = told == RAN_OUT_TANK;
    const char *backup;

    if (told == RAN_OUT_NOTHING || equipment_trouble_told(asked) == TROUBLE_DANGER) {
        return false;
    }
    backup = is_tank ? NULL : say_use_backup(asked->arena, house, asked->language, asked->rental);
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, "ran-out")->text =
        say(asked->arena, house, asked->language, is_tank ? SAY_RAN_OUT_TANK : SAY_RAN_OUT_BATTERY,
            backup, NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:ran-out",
                  is_tank ? "cylinder empty" : "battery empty");
    flowing_ask(asked, verdict);
    return true;
}
