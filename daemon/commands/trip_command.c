/*
 * `hutbell trip`: the arithmetic of the trip answers, drawn. What is told stands in a text as a
 * renter would write it, or in options; unit and batteries come from a rental, or from options.
 */
#include "commands.h"

#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "clock.h"
#include "config.h"
#include "exit_code.h"
#include "kb.h"
#include "lexicon.h"
#include "memory.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "say.h"
#include "trip_leg.h"
#include "trip_plan.h"
#include "trip_strip.h"

static const struct command_help help = {
    .usage = "hutbell trip (--rental ID | --unit ID --order \"MODE SETTING\") [options] [\"text\"]",
    .text =
        "Plays a trip leg by leg, as the answer to a text does, and draws the charge of\n"
        "the batteries by hours. Counted low: it may last longer, it should not last less.\n\n"
        "What the trip is:\n"
        "  \"text\"            as a renter writes it: \"drive 2 h with the car cord, walk 1 h,\n"
        "                    drive 2 h, 2 full and one half\"\n"
        "  --leg \"KIND LENGTH [POWER]\"   one leg more, in order; KIND is drive, flight, stay,\n"
        "                    walk or other, LENGTH minutes or H:MM, POWER wall or car\n"
        "  --charge PERCENT  one battery more; without any all of them are full\n\n"
        "On what:\n"
        "  --rental ID       unit, orders and batteries of this rental\n"
        "  --unit ID         or a unit of the content (kb/equipment), with\n"
        "  --order \"pulse 2\"   what is ordered, whatever they do,\n"
        "  --health PERCENT  measured health of the batteries (the retirement limit),\n"
        "  --car-cord        and a cord for the car\n\n"
        "  --svg FILE        write the drawing as SVG too\n"
        "  --config FILE     the configuration (" DEFAULT_CONFIG_FILE ")\n"
        "  --kb FOLDER       the content; with --unit no configuration is needed then\n\n"
        "Example: hutbell trip --kb kb --unit wren --order \"pulse 2\" --charge 100 \\\n"
        "         --charge 50 --leg \"drive 1:40\" --leg \"stay 180 wall\" --leg \"drive 1:40\"\n",
};

struct trip_options {
    const char *config_file, *kb_folder, *rental_id, *unit, *order, *svg, *text;
    int health;
    bool car_cord;
    struct told told; /* what --leg and --charge say */
};

struct tripping {
    void *arena;
    struct config *config; /* or NULL */
    struct kb *kb;
    int64_t now_utc_s;
    struct rental rental;
    const struct equipment *equipment;
    struct told told;
    struct percent charges[TRIP_BATTERIES_MAX];
    size_t charge_count;
    struct trip_plan plan;
    struct trip_outcome outcome;
};

/* ---- What is told -------------------------------------------------------------------------- */

static bool
add_leg(struct trip_options *options, const char *words)
{
    char *own = memory_copy(NULL, words);
    bool is_read = options->told.leg_count < TRIP_LEGS_MAX &&
                   trip_leg_read(own, &options->told.legs[options->told.leg_count]);

    options->told.leg_count += is_read ? 1 : 0;
    talloc_free(own);
    if (!is_read) {
        fprintf(stderr,
                "hutbell trip: --leg \"%s\" is no leg, or one too many; give it as \"drive 1:40\","
                " \"stay 180 wall\"\n",
                words);
    }
    return is_read;
}

static bool
add_charge(struct trip_options *options, const char *words)
{
    struct told *told = &options->told;
    char *end;
    int percent;

    if (told->charge_count == TRIP_BATTERIES_MAX ||
        !trip_leg_number(words, &end, 0, 100, &percent) || *end != '\0') {
        fprintf(stderr, "hutbell trip: --charge %s is no percent, or one battery too many\n",
                words);
        return false;
    }
    told->charges[told->charge_count++] = (struct percent){percent, percent};
    return true;
}

/* One flight alone is read as that, for what an airline asks; here it is played as a leg. */
static void
take_flight_as_leg(struct told *told)
{
    if (told->leg_count == 0 && told->flight_minutes > 0) {
        told->legs[told->leg_count++] =
            (struct told_leg){.minutes = told->flight_minutes, .kind = LEG_FLIGHT};
        told->flight_minutes = 0;
    }
}

/* The text's, and behind it what the options say. */
static int
take_told(const struct trip_options *options, struct tripping *tripping, struct fault *fault)
{
    struct told *told = &tripping->told;
    size_t i;

    if (options->text != NULL) {
        told_read(tripping->arena, lexicon_new(tripping->arena, tripping->kb), options->text, told);
        take_flight_as_leg(told);
    }
    for (i = 0; i < options->told.leg_count && told->leg_count < TRIP_LEGS_MAX; i++) {
        told->legs[told->leg_count++] = options->told.legs[i];
    }
    for (i = 0; i < options->told.charge_count && told->charge_count < TOLD_BATTERIES_MAX; i++) {
        told->charges[told->charge_count++] = options->told.charges[i];
    }
    for (i = 0; i < told->leg_count; i++) {
        if (told->legs[i].minutes > 2880) {
            fault_set(fault, "a leg of more than two days is no leg");
            return -1;
        }
    }
    if (told->leg_count == 0) {
        fault_set(fault, "no leg with a length was read; give --leg \"drive 1:40\", or a text like "
                         "\"drive 2 h, walk 1 h\"");
        return -1;
    }
    return 0;
}

static int
take_charges(struct tripping *tripping, struct fault *fault)
{
    const struct told *told = &tripping->told;
    struct percent *charges = tripping->charges, band;
    size_t count = 0, i;
    int rest;

    for (i = 0; i < told->charge_count && count < TRIP_BATTERIES_MAX; i++) {
        charges[count++] = told->charges[i];
    }
    for (i = 0; i < told->light_count && count < TRIP_BATTERIES_MAX; i++) {
        if (!equipment_gauge_band(tripping->equipment, told->lights[i], &band)) {
            fault_set(fault, "the gauge of %s has no %d lights", tripping->equipment->name,
                      told->lights[i]);
            return -1;
        }
        charges[count++] = band;
    }
    rest = count == 0 && told->count == 0 ? (int)tripping->rental.battery_count : told->count;
    for (; rest > 0 && count < TRIP_BATTERIES_MAX; rest--) {
        charges[count++] = (struct percent){100, 100};
    }
    if (count == 0) {
        fault_set(fault, "no battery is told; give --charge 100 for each");
        return -1;
    }
    tripping->charge_count = count;
    return 0;
}

/* ---- On what ------------------------------------------------------------------------------- */

static int
load(const struct trip_options *options, struct tripping *tripping, struct fault *fault)
{
    bool needs_config = options->rental_id != NULL || options->kb_folder == NULL;
    const char *file = options->config_file != NULL ? options->config_file : DEFAULT_CONFIG_FILE;
    const char *folder = options->kb_folder;
    struct faults faults = {0};
    int rc = 0;

    if (needs_config || options->config_file != NULL) {
        rc = config_load(file, &tripping->config, &faults);
    }
    if (rc == 0) {
        folder = folder != NULL ? folder : tripping->config->kb_folder;
        rc = kb_load_equipment(folder, &tripping->kb, &faults);
    }
    if (rc != 0) {
        fault_set(fault, "%s", faults.list[0].text);
    }
    faults_release(&faults);
    return rc;
}

static int
rental_of_store(const struct trip_options *options, struct tripping *tripping, struct fault *fault)
{
    struct store *store;
    struct rental_row row;
    bool found;
    int rc = -1;

    if (store_open(tripping->config->database, STORE_READ, &store, fault) != 0) {
        return -1;
    }
    if (rental_rows_newest(store, tripping->arena, options->rental_id, &row, &found, fault) != 0) {
        goto out;
    }
    if (!found || !rental_record_parse(tripping->arena, row.json, &tripping->rental)) {
        fault_set(fault, "there is no rental %s that can be read; hutbell export rentals lists all",
                  options->rental_id);
        goto out;
    }
    rc = 0;
out:
    store_close(store);
    return rc;
}

/* A rental of nobody: the same order for everything, as many batteries as are told. */
static int
rental_of_options(const struct trip_options *options, struct tripping *tripping,
                  struct fault *fault)
{
    struct rental *rental = &tripping->rental;
    char *mode = memory_copy(tripping->arena, options->order), *number = strchr(mode, ' '), *end;
    struct order order = {.known = true};
    double setting;
    int i;

    if (number != NULL) {
        *number++ = '\0';
    }
    order.mode = mode_named(mode);
    setting = number == NULL ? 0 : strtod(number, &end);
    if (order.mode == MODE_COUNT || number == NULL || *end != '\0' || !(setting > 0) ||
        setting > 15) {
        fault_set(fault, "--order \"%s\" is no order; give it as \"pulse 2\" or \"continuous 1.5\"",
                  options->order);
        return -1;
    }
    order.setting_tenths = (int)(setting * 10 + 0.5);
    for (i = 0; i < ACTIVITY_COUNT; i++) {
        rental->orders[i] = order;
    }
    for (i = 0; options->health > 0 && i < RENTAL_BATTERIES_MAX; i++) {
        rental->batteries[i] = (struct battery){.health_percent = options->health,
                                                .measured_utc_s = tripping->now_utc_s};
        rental->battery_count++;
    }
    rental->unit = options->unit;
    rental->car_charger = options->car_cord;
    return 0;
}

static int
take_unit(const struct trip_options *options, struct tripping *tripping, struct fault *fault)
{
    int rc = options->rental_id != NULL ? rental_of_store(options, tripping, fault)
                                        : rental_of_options(options, tripping, fault);

    if (rc != 0) {
        return -1;
    }
    if (options->rental_id == NULL && tripping->told.count == 0 &&
        tripping->told.charge_count + tripping->told.light_count == 0) {
        fault_set(fault, "no battery is told; give --charge 100 for each");
        return -1;
    }
    tripping->equipment =
        tripping->rental.unit == NULL ? NULL : kb_equipment(tripping->kb, tripping->rental.unit);
    if (tripping->equipment == NULL) {
        fault_set(fault, "there is no unit %s in the content; kb/equipment holds them",
                  tripping->rental.unit != NULL ? tripping->rental.unit : "on record");
        return -1;
    }
    return 0;
}

/* ---- What comes of it ---------------------------------------------------------------------- */

static int
play(struct tripping *tripping, struct fault *fault)
{
    static const char *const lacks[] = {
        [TRIP_PLAN_NO_ORDER] = "nothing is ordered for what they do on some leg",
        [TRIP_PLAN_NO_FIGURE] =
            "the unit's file has no run time, cold share or battery health for that",
        [TRIP_PLAN_WALL_ONLY] = "what is ordered on some leg runs from the wall only"};
    enum trip_plan_is is =
        trip_plan_make(&tripping->rental, tripping->equipment, &tripping->told, tripping->charges,
                       tripping->charge_count, tripping->now_utc_s, TRIP_PLAN_LOW, &tripping->plan);

    if (is != TRIP_PLAN_READY) {
        fault_set(fault, "%s", lacks[is]);
        return -1;
    }
    trip_play(&tripping->plan.trip, &tripping->outcome);
    return 0;
}

static void
print_mend(const struct tripping *tripping)
{
    static const char *const mends[] = {
        [TRIP_MEND_NONE] = "2 more full batteries would not do either",
        [TRIP_MEND_CAR_CORD] = "the unit run from the car's outlet on the drives",
        [TRIP_MEND_WALL_STOPS] = "plugged in on every stay",
        [TRIP_MEND_ONE_BATTERY] = "1 more full battery",
        [TRIP_MEND_TWO_BATTERIES] = "2 more full batteries"};

    if (!trip_is_safe(&tripping->outcome)) {
        printf("would mend it: %s\n",
               mends[trip_mend(&tripping->plan.trip, tripping->equipment->retirement_health)]);
    }
    if (tripping->plan.no_car_cord) {
        printf("the car counted as no power: there is no cord on record\n");
    }
    if (tripping->plan.too_high) {
        printf("higher than the unit is made for: %d ft\n", tripping->equipment->altitude_ft);
    }
    if (tripping->plan.differs) {
        printf("what is told differs from what is ordered\n");
    }
}

static int
write_svg(const char *file, const char *svg, struct fault *fault)
{
    FILE *out = fopen(file, "w");
    bool failed = out == NULL || fputs(svg, out) < 0;

    if (out != NULL && fclose(out) != 0) {
        failed = true;
    }
    if (failed) {
        fault_set(fault, "%s: cannot be written: %s", file, strerror(errno));
        return -1;
    }
    return 0;
}

static int
draw(const struct trip_options *options, struct tripping *tripping, struct fault *fault)
{
    enum leg_kind kinds[TRIP_LEGS_MAX];
    const struct trip_drawing drawing = {&tripping->plan.trip, &tripping->outcome, kinds};
    size_t i;

    for (i = 0; i < tripping->told.leg_count; i++) {
        kinds[i] = tripping->told.legs[i].kind;
    }
    printf("%s, read: %s\n\n%s", tripping->equipment->name,
           say_read(tripping->arena, LANGUAGE_EN, &tripping->told),
           trip_strip(tripping->arena, &drawing));
    print_mend(tripping);
    return options->svg == NULL
               ? 0
               : write_svg(options->svg, trip_svg(tripping->arena, &drawing), fault);
}

static int
run(const struct trip_options *options)
{
    struct tripping *tripping = memory_new(NULL, struct tripping);
    struct clock *clock = clock_new(0, 1);
    struct fault fault = {""};
    int rc;

    tripping->arena = tripping;
    tripping->now_utc_s = clock_now_utc_s(clock);
    clock_free(clock);
    rc = take_told(options, tripping, &fault) != 0 || load(options, tripping, &fault) != 0 ||
                 take_unit(options, tripping, &fault) != 0 || take_charges(tripping, &fault) != 0 ||
                 play(tripping, &fault) != 0 || draw(options, tripping, &fault) != 0
             ? -1
             : 0;
    if (rc != 0) {
        fprintf(stderr, "hutbell trip: %s\n", fault.text);
    }
    kb_free(tripping->kb);
    config_free(tripping->config);
    talloc_free(tripping);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

/* ---- The command --------------------------------------------------------------------------- */

/* False if the option cannot be so; what is wrong has been said. */
static bool
take_option(int option, struct trip_options *options)
{
    char *end;

    switch (option) {
    case 'c':
        options->config_file = optarg;
        return true;
    case 'k':
        options->kb_folder = optarg;
        return true;
    case 'r':
        options->rental_id = optarg;
        return true;
    case 'u':
        options->unit = optarg;
        return true;
    case 'o':
        options->order = optarg;
        return true;
    case 's':
        options->svg = optarg;
        return true;
    case 'w':
        options->car_cord = true;
        return true;
    case 'l':
        return add_leg(options, optarg);
    case 'b':
        return add_charge(options, optarg);
    case 'e':
        return trip_leg_number(optarg, &end, 1, 100, &options->health) && *end == '\0';
    default:
        return false;
    }
}

int
command_trip(int argc, char **argv)
{
    static const struct option known[] = {
        {"config", required_argument, NULL, 'c'}, {"kb", required_argument, NULL, 'k'},
        {"rental", required_argument, NULL, 'r'}, {"unit", required_argument, NULL, 'u'},
        {"order", required_argument, NULL, 'o'},  {"svg", required_argument, NULL, 's'},
        {"car-cord", no_argument, NULL, 'w'},     {"leg", required_argument, NULL, 'l'},
        {"charge", required_argument, NULL, 'b'}, {"health", required_argument, NULL, 'e'},
        {"help", no_argument, NULL, 'h'},         {0}};
    struct trip_options options = {0};
    bool by_unit;
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        if (option == 'h') {
            return command_print_help(&help);
        }
        if (!take_option(option, &options)) {
            return command_print_usage(&help);
        }
    }
    by_unit = options.unit != NULL && options.order != NULL;
    if (by_unit == (options.rental_id != NULL) || argc - optind > 1) {
        return command_print_usage(&help);
    }
    options.text = argv[optind]; /* NULL without one */
    return run(&options);
}
