#include "fixture.h"

#include <stdlib.h>
#include <string.h>

#include "content.h"
#include "lexicon.h"
#include "memory.h"

const int64_t fixture_start_utc_s = 1770747300;

static const char finch[] =
    "{\"name\": \"Finch\", \"alarms\": ["
    "{\"shows\": \"PUMP LOW\", \"meaning\": \"Look for a bend.\", "
    "\"meaning_es\": \"Busque un doblez.\", \"oxygen_stops\": true},"
    "{\"shows\": \"PLUG IN\", \"meaning\": \"Use the wall.\", \"oxygen_stops\": false},"
    "{\"shows\": \"NO BREATH\", \"meaning\": \"Check the prongs.\", \"oxygen_stops\": false}],"
    "\"run_times\": ["
    "{\"mode\": \"continuous\", \"setting\": 2, \"minutes\": [60, 72], \"battery\": \"new\","
    " \"figure\": \"office\", \"watts\": 90},"
    "{\"mode\": \"pulse\", \"setting\": 2, \"minutes\": [200, 240], \"battery\": \"new\","
    " \"figure\": \"office\", \"watts\": 27},"
    "{\"mode\": \"pulse\", \"setting\": 3, \"minutes\": [150, 180], \"battery\": \"new\","
    " \"figure\": \"office\", \"watts\": 34}],"
    "\"gauge\": {\"how\": \"Press the blue key.\", \"steps\": ["
    "{\"lights\": 0, \"percent\": [0, 10]}, {\"lights\": 1, \"percent\": [10, 25]},"
    "{\"lights\": 2, \"percent\": [25, 50]}, {\"lights\": 3, \"percent\": [50, 75]},"
    "{\"lights\": 4, \"percent\": [75, 100]}]},"
    "\"swap\": {\"how\": \"Slide it out.\", \"oxygen_stops\": true},"
    "\"battery\": {\"rated_wh\": 95, \"held\": 1, \"retirement_health\": 80},"
    "\"charging\": {\"off\": {\"to_80\": [105, 125], \"to_full\": [170, 205]}},"
    "\"car\": {\"runs\": true, \"charges\": true, \"both_at_once\": false, \"amps_limit\": 10},"
    "\"needs_wall\": [\"continuous 3\"],"
    "\"tube_feet\": {\"continuous\": 50, \"pulse\": 7},"
    "\"celsius\": {\"running\": [5, 40], \"charging\": [5, 35]},"
    "\"altitude_ft\": 10000, \"aircraft_label\": true, \"weight_grams\": 4600}\n";

static const char wagtail[] =
    "{\"name\": \"Wagtail\", \"run_times\": ["
    "{\"mode\": \"continuous\", \"setting\": 1, \"minutes\": [90, 100], \"battery\": \"new\","
    " \"figure\": \"office\", \"watts\": 60},"
    "{\"mode\": \"pulse\", \"setting\": 2, \"minutes\": [150, 180], \"battery\": \"new\","
    " \"figure\": \"maker\", \"watts\": 27}],"
    "\"battery\": {\"rated_wh\": 120, \"held\": 1, \"retirement_health\": 75},"
    "\"charging\": {\"off\": {\"to_80\": [100, 120], \"to_full\": [170, 200]},"
    " \"running\": {\"to_80\": [180, 240], \"to_full\": [300, 390]},"
    " \"apart\": {\"to_80\": [110, 130], \"to_full\": [180, 215]}},"
    "\"car\": {\"runs\": true, \"charges\": true, \"both_at_once\": true, \"amps_limit\": 12},"
    "\"cold\": [{\"celsius\": 20, \"percent\": 100}, {\"celsius\": 0, \"percent\": 85},"
    " {\"celsius\": -10, \"percent\": 70}],"
    "\"aircraft_label\": true}\n";

static const char backup_topic[] =
    "# Your backup oxygen\n\n"
    "Turn the key on top to open the backup.\n\n## Asked as\n\n"
    "- how do i open the backup\n- where is my backup oxygen\n- how do i use the backup cylinder\n"
    "- how does the tank work\n- when do i use the backup\n- open the tank\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char battery_life[] =
    "# How long a battery lasts\n\n"
    "{battery-life|It depends on the unit.} Cold makes it shorter.\n\n## Asked as\n\n"
    "- how long does a battery last\n- battery life\n- how many hours does one battery give\n"
    "- how long do the batteries last in general\n- run time of a full battery\n"
    "- how long will a full charge last\n- how long does a battery go on setting 2\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char charge_car[] =
    "# Charging from the car\n\n"
    "{car-outlet|Some units charge in a car. Call {phone}.} Keep the engine on.\n\n## Asked as\n\n"
    "- can i charge it in the car\n- does it work off the lighter plug\n- car charger\n"
    "- plug it into the car outlet\n- charging while driving\n- 12 volt socket in the car\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char contact[] =
    "# Reaching the office\n\n"
    "{company}: {phone}. Open {hours}.\n\n## Asked as\n\n"
    "- what are your office hours\n- what is your phone number\n- when are you open\n"
    "- how do i reach the office\n- where is your office\n- i want to talk to a person\n"
    "- can someone call me\n\n## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char due_date[] =
    "# When the rental is due\n\n"
    "Your rental is due: {due|the day on your slip}. {return-how}\n\n## Asked as\n\n"
    "- when is it due\n- when do i have to return it\n- what day is my rental up\n"
    "- when does my rental end\n- last day of the rental\n- due date\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char extend[] =
    "# Keeping it longer\n\n"
    "You can ask to keep it longer.\n\n## Asked as\n\n"
    "- can we keep it longer\n- extend my rental two more days\n- i need another week\n"
    "- extension please\n- may i hang on to it until sunday\n- one more day please\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

/* No topic of this content is about more of them. */
static const char elsewhere[] =
    "could we have another battery\nwe want two more batteries by monday\nmore batteries for us\n"
    "is there a spare battery to be had\n";

static const char hours_left[] =
    "# How long it will last from now\n\n"
    "I can work that out. Text me the lights on each battery.\n\n## Asked as\n\n"
    "- how long have i got left\n- how long now\n- how many hours do i have\n"
    "- how much time is left\n- when will it run out\n- how long will it last now\n"
    "- 2 full batteries how long is that\n- how much longer will this battery run\n\n"
    "## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

static const char night_mode[] =
    "# Sleeping with the unit\n\n"
    "{night|Use only what is ordered for sleep.} Plug it in all night.\n\n## Asked as\n\n"
    "- can i sleep with it on\n- what is night mode\n- do i wear it to bed\n"
    "- which setting for sleeping\n- does it have to be plugged in at night\n\n"
    "## Only if\n\n- mode pulse\n\n## Approved\n\n- A. Tester, clinician, 2026-01-02\n";

#define SIGN(title, level, brief, reply, said)                                                     \
    "# " title "\n\nLevel: " level "\nIn brief: " brief "\n\n" reply "\n\n" said                   \
    "## Sources\n\n- invented for a test\n\n## Approved\n\n- A. Tester, clinician, 2026-01-02\n"

static const char asks_emergency[] =
    SIGN("Asks for an ambulance", "emergency", "asks for 911",
         "Call {emergency} now. A voice call is best. Do not wait for a text.",
         "## Said as\n\n- call an ambulance\n- called 911\n- 911\n\n");
static const char battery_hot[] =
    SIGN("Battery hot or swollen", "equipment", "battery hot",
         "Leave it on a hard floor and move away. Smoke? Get out, then call {emergency}.",
         "## Said as\n\n- battery hot / swollen / swelled\n\n");
static const char battery_smoking[] =
    SIGN("Battery smoking", "emergency", "battery smoking",
         "Get out now, then call {emergency}. Do not go back in.",
         "## Said as\n\n- battery hissing / smoking\n- its hissing\n\n");
static const char change_setting[] =
    SIGN("Change of setting", "clinical", "change setting",
         "Please keep it as ordered. Staff will call you. Trouble breathing? Call {emergency}.",
         "## Said as\n\n- turn it up\n- change the setting\n\n");
static const char chest_pain[] =
    SIGN("Chest pain", "emergency", "chest pain",
         "Call {emergency} now. Say: chest pain, on oxygen. Sit down. Do not wait for a text.",
         "## Said as\n\n- chest pain\n- my chest hurts\n\n## Not meant by\n\n"
         "- get it off my chest\n\n");
static const char death_told[] =
    SIGN("A death", "clinical", "death told",
         "We are so sorry. A person from our office will write to you.",
         "## Said as\n\n- passed away\n- has died\n\n");
static const char dizzy[] =
    SIGN("Dizzy", "clinical", "dizzy", "Sit down. Staff were alerted and will call you.",
         "## Said as\n\n- i feel dizzy\n- dizzy\n\n");
static const char face_burn[] =
    SIGN("Fire", "emergency", "fire",
         "Get away from the fire and turn the oxygen off. Call {emergency} now.",
         "## Said as\n\n- cannula caught fire\n- face burned\n\n");
static const char low_reading[] = SIGN(
    "Low reading", "emergency", "low reading",
    "Call {emergency} now. Say: oxygen reading, on oxygen. Sit up. Do not wait for a text.", "");
static const char unit_stopped[] =
    SIGN("No oxygen", "equipment", "no oxygen",
         "Go to your backup oxygen now. Staff were alerted. Trouble breathing? Call {emergency}.",
         "## Said as\n\n- no oxygen coming out\n- machine stopped\n\n");
static const char power_out[] =
    SIGN("Power out", "equipment", "power out",
         "Stay on battery or go to your backup oxygen. Staff were alerted.",
         "## Said as\n\n- power is out\n- no power\n\n");
static const char reading[] =
    SIGN("Reading", "clinical", "reading",
         "I can't judge a reading. Staff were alerted. Feel worse? Call {emergency}.", "");
static const char cant_breathe[] =
    SIGN("Trouble breathing", "emergency", "can't breathe",
         "Trouble breathing: call {emergency} now. Sit up. Do not wait for a text.",
         "## Said as\n\n- cant breathe\n- stopped breathing\n- no breath\n\n");

static const char me_ahogo[] =
    SIGN("Falta de aire", "emergency", "can't breathe",
         "Llame al {emergency} ya. Diga: le falta el aire. No espere mensajes.",
         "## Said as\n\n- me ahogo\n- no puedo respirar\n\n");

#define FILE_OF(path, bytes)                                                                       \
    {                                                                                              \
        path, bytes, sizeof(bytes) - 1                                                             \
    }

/* In name order, as the reader wants them. */
static const struct content_file files[] = {
    FILE_OF("equipment/finch.json", finch),
    FILE_OF("equipment/wagtail.json", wagtail),
    FILE_OF("signs/en/asks-emergency.md", asks_emergency),
    FILE_OF("signs/en/battery-hot.md", battery_hot),
    FILE_OF("signs/en/battery-smoking.md", battery_smoking),
    FILE_OF("signs/en/change-setting.md", change_setting),
    FILE_OF("signs/en/chest-pain.md", chest_pain),
    FILE_OF("signs/en/death-told.md", death_told),
    FILE_OF("signs/en/dizzy.md", dizzy),
    FILE_OF("signs/en/face-burn-fire.md", face_burn),
    FILE_OF("signs/en/low-reading.md", low_reading),
    FILE_OF("signs/en/power-out-now.md", power_out),
    FILE_OF("signs/en/reading.md", reading),
    FILE_OF("signs/en/trouble-breathing.md", cant_breathe),
    FILE_OF("signs/en/unit-stopped.md", unit_stopped),
    FILE_OF("signs/es/trouble-breathing.md", me_ahogo),
    FILE_OF("topics/en/backup.md", backup_topic),
    FILE_OF("topics/en/battery-life.md", battery_life),
    FILE_OF("topics/en/charge-car.md", charge_car),
    FILE_OF("topics/en/contact.md", contact),
    FILE_OF("topics/en/due-date.md", due_date),
    FILE_OF("topics/en/extend.md", extend),
    FILE_OF("topics/en/hours-left.md", hours_left),
    FILE_OF("topics/en/night-mode.md", night_mode),
    FILE_OF("words/en-elsewhere.txt", elsewhere),
};

static void
fill_house(struct fixture *fixture)
{
    fixture->house = (struct house){.company = "Larkspur Air Rentals",
                                    .phone = "208-555-0100",
                                    .address = "1 Mill Lane, Dorrow",
                                    .hours = {"8 am to 6 pm", "8 am a 6 pm"},
                                    .return_how = {"Bring it to the office.", NULL},
                                    .emergency_number = "911",
                                    .emergency_reading = 85,
                                    .late_s = 600,
                                    .conversation_s = 6 * 3600};
    fixture->step = (struct zone_step){INT64_MIN, -7 * 3600};
    fixture->zone = (struct zone){&fixture->step, 1};
}

static void
fill_ana(struct rental *ana)
{
    *ana = (struct rental){.rental_id = "R-1",
                           .state = RENTAL_OUT,
                           .name = "Ana Vell",
                           .first_name = "Ana",
                           .language = LANGUAGE_EN,
                           .phone_count = 1,
                           .unit = "finch",
                           .battery_count = 2,
                           .chargers = 1,
                           .car_charger = true,
                           .start_utc_s = fixture_start_utc_s - 86400,
                           .due_utc_s = fixture_start_utc_s + 4 * 86400 - 75 * 60,
                           .emergency_address = "14 Tarn Road, Cabin 4",
                           .place = "Cabin 4",
                           .digest = "digest-1"};
    ana->phones[0] = (struct phone){"+12085550101", "renter", REACH_ANY};
    ana->orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 20, 0, "Dr. Q"};
    ana->orders[ACTIVITY_WALKING] = (struct order){true, MODE_PULSE, 30, 0, "Dr. Q"};
    ana->orders[ACTIVITY_SLEEP] = (struct order){true, MODE_PULSE, 20, 0, "Dr. Q"};
    ana->batteries[0] = (struct battery){"B-1", 100, fixture_start_utc_s - 86400};
    ana->batteries[1] = (struct battery){"B-2", 90, fixture_start_utc_s - 86400};
    ana->backup = (struct backup){true, "cylinder", "E", 2000, fixture_start_utc_s, 20};
}

struct fixture *
fixture_new(void)
{
    struct content content = {.files = files, .count = sizeof files / sizeof files[0]};
    struct fixture *fixture = memory_must(calloc(1, sizeof *fixture));
    struct faults faults = {0};
    size_t i;

    fixture->arena = memory_must(talloc_new(NULL));
    if (kb_read(&content, &fixture->kb, &faults) != 0) {
        for (i = 0; i < faults.count; i++) {
            fprintf(stderr, "%s\n", faults.list[i].text);
        }
        ck_abort_msg("the invented knowledge base does not load");
    }
    faults_release(&faults);
    fill_house(fixture);
    fill_ana(&fixture->rentals[0]);
    fixture->context = (struct context){.kb = fixture->kb,
                                        .lexicon = lexicon_new(fixture->arena, fixture->kb),
                                        .workspace = workspace_new(),
                                        .house = &fixture->house,
                                        .zone = &fixture->zone,
                                        .now_utc_s = fixture_start_utc_s,
                                        .role = SENDER_RENTER,
                                        .rentals = fixture->rentals,
                                        .accounts = fixture->accounts,
                                        .rental_count = 1,
                                        .reminders = fixture->reminders,
                                        .recent = fixture->recent,
                                        .alerts = fixture->alerts};
    return fixture;
}

void
fixture_free(struct fixture *fixture)
{
    workspace_free(fixture->context.workspace);
    kb_free(fixture->kb);
    talloc_free(fixture->arena);
    free(fixture);
}

struct rental *
fixture_second_rental(struct fixture *fixture)
{
    struct rental *tom = &fixture->rentals[1];

    *tom = (struct rental){.rental_id = "R-2",
                           .state = RENTAL_OUT,
                           .name = "Tom Vell",
                           .first_name = "Tom",
                           .unit = "wagtail",
                           .battery_count = 1,
                           .due_utc_s = fixture_start_utc_s + 86400,
                           .emergency_address = "2 Fallow Lane, Room 7",
                           .digest = "digest-2"};
    tom->orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    tom->batteries[0] = (struct battery){"B-9", 100, fixture_start_utc_s - 86400};
    fixture->context.rental_count = 2;
    return tom;
}

void
fixture_stranger(struct fixture *fixture)
{
    fixture->context.rental_count = 0;
    fixture->context.role = SENDER_STRANGER;
}

void
fixture_staff(struct fixture *fixture)
{
    fixture->context.rental_count = 0;
    fixture->context.role = SENDER_STAFF;
    fixture->context.staff_name = "Jo";
}

struct open_alert *
fixture_alert(struct fixture *fixture, int64_t number, const char *reason)
{
    struct open_alert *alert = &fixture->alerts[fixture->context.alert_count++];

    *alert = (struct open_alert){.number = number,
                                 .head = number,
                                 .level = ALERT_URGENT,
                                 .rental_id = "R-1",
                                 .phone = "+12085550101",
                                 .reason = reason,
                                 .reasons = reason,
                                 .brief = "in brief",
                                 .opened_utc_s = fixture->context.now_utc_s};
    return alert;
}

/* One alert, which is raised by what is graver. */
static void
keep_alert(struct fixture *fixture)
{
    const struct alert_call *call = &fixture->verdict.alert;

    if (call->level == ALERT_NONE) {
        return;
    }
    if (fixture->context.alert_count == 0) {
        fixture_alert(fixture, 1, call->reason)->level = call->level;
        fixture->alerts[0].brief = memory_copy(fixture->arena, call->brief);
    } else {
        fixture->alerts[0].brief =
            memory_format(fixture->arena, "%s + %s", fixture->alerts[0].brief, call->brief);
        fixture->alerts[0].reasons =
            memory_format(fixture->arena, "%s,%s", fixture->alerts[0].reasons, call->reason);
    }
    if (call->level == ALERT_EMERGENCY) {
        fixture->alerts[0].grave_utc_s = fixture->context.now_utc_s;
    }
    if (call->level == ALERT_EMERGENCY && strncmp(call->reason, "sign:", strlen("sign:")) == 0) {
        const char *before = fixture->alerts[0].grave_texts;

        fixture->alerts[0].grave_texts = memory_format(
            fixture->arena, "%s\n%s", before == NULL ? "" : before, fixture->message.text);
    }
    if (call->level > fixture->alerts[0].level) {
        fixture->alerts[0].level = call->level;
        fixture->alerts[0].reason = call->reason;
    }
}

/* What the daemon would write, the next text reads. */
static void
keep_changes(struct fixture *fixture)
{
    const struct verdict *verdict = &fixture->verdict;
    size_t i;

    if (verdict->conversation_changed) {
        fixture->context.conversation = verdict->conversation;
    }
    if (fixture->keeps_alerts) {
        keep_alert(fixture);
    }
    for (i = 0; verdict->account_changed && i < fixture->context.rental_count; i++) {
        if (strcmp(fixture->rentals[i].rental_id, verdict->rental_id) == 0) {
            fixture->accounts[i] = verdict->account;
        }
    }
}

/* As the daemon's rows: a newer charge and a cancelled one end what waits. */
static void
keep_reminder(struct fixture *fixture)
{
    const struct verdict *verdict = &fixture->verdict;
    const struct reminder_change *change = &verdict->reminder;
    struct context *context = &fixture->context;
    size_t i, kept = 0;

    for (i = 0; i < context->reminder_count; i++) {
        enum reminder_kind kind = fixture->reminders[i].kind;
        bool ends = kind == REMINDER_RUNNING_OUT &&
                    (verdict->account_changed || change->step == REMINDER_SET);

        if (!ends && !(kind != REMINDER_OFFERED && change->step == REMINDER_CANCEL)) {
            fixture->reminders[kept++] = fixture->reminders[i];
        }
    }
    if (change->step == REMINDER_SET || change->step == REMINDER_OFFER) {
        fixture->reminders[kept++] = change->reminder;
    }
    context->reminder_count = kept;
}

static void
keep_recent(struct fixture *fixture)
{
    size_t count = fixture->context.recent_count;

    if (count == sizeof fixture->recent / sizeof fixture->recent[0]) {
        memmove(&fixture->recent[0], &fixture->recent[1], (count - 1) * sizeof fixture->recent[0]);
        count--;
    }
    fixture->recent[count] =
        (struct recent_text){fixture->message.text, fixture->message.sent_utc_s};
    fixture->context.recent_count = count + 1;
}

const struct verdict *
fixture_text(struct fixture *fixture, const char *text)
{
    fixture->message = (struct message){.gateway = "test",
                                        .sender = "+12085550101",
                                        .text = memory_copy(fixture->arena, text),
                                        .sent_utc_s = fixture->context.now_utc_s,
                                        .received_utc_s = fixture->context.now_utc_s};
    handlers_decide(fixture->arena, &fixture->message, &fixture->context, &fixture->verdict);
    keep_changes(fixture);
    keep_reminder(fixture);
    keep_recent(fixture);
    return &fixture->verdict;
}

void
fixture_wait_minutes(struct fixture *fixture, int minutes)
{
    fixture->context.now_utc_s += minutes * 60;
}

const char *
fixture_replies(struct fixture *fixture)
{
    char *text = memory_copy(fixture->arena, "");
    size_t i;

    for (i = 0; i < fixture->verdict.reply_count; i++) {
        memory_append(&text, "%s%s", i == 0 ? "" : "\n", fixture->verdict.replies[i].text);
    }
    return text;
}

const struct answer *
fixture_answer(const struct fixture *fixture, const char *id)
{
    size_t i;

    for (i = 0; i < fixture->verdict.answer_count; i++) {
        if (strcmp(fixture->verdict.answers[i].id, id) == 0) {
            return &fixture->verdict.answers[i];
        }
    }
    return NULL;
}

void
fixture_says(struct fixture *fixture, const char *words)
{
    const char *replies = fixture_replies(fixture);

    ck_assert_msg(strstr(replies, words) != NULL, "\"%s\" is not said in \"%s\"", words, replies);
}

void
fixture_says_not(struct fixture *fixture, const char *words)
{
    const char *replies = fixture_replies(fixture);

    ck_assert_msg(strstr(replies, words) == NULL, "\"%s\" is said in \"%s\"", words, replies);
}

void
fixture_alerts(const struct fixture *fixture, enum alert_level level, const char *reason)
{
    ck_assert_int_eq(fixture->verdict.alert.level, level);
    if (reason != NULL) {
        ck_assert_ptr_nonnull(fixture->verdict.alert.reason);
        ck_assert_str_eq(fixture->verdict.alert.reason, reason);
    }
}

int
fixture_run(TCase *tests)
{
    Suite *suite = suite_create("handlers");
    SRunner *runner = srunner_create(suite);
    int failed;

    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
