/* The configuration. Each test changes the example in config/ and reads it. */
#include <check.h>
#include <jansson.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "memory.h"

static json_t *root;
static struct config *config;
static struct faults faults;

static char *
source_file(void *arena, const char *path)
{
    const char *top = getenv("SOURCE_ROOT");

    ck_assert_msg(top != NULL, "SOURCE_ROOT names the folder of the sources");
    return memory_format(arena, "%s/%s", top, path);
}

static void
set_up(void)
{
    char *path = source_file(NULL, "config/hutbell.example.json");
    json_error_t at;

    root = json_load_file(path, 0, &at);
    ck_assert_msg(root != NULL, "%s", at.text);
    talloc_free(path);
}

static void
tear_down(void)
{
    json_decref(root);
    config_free(config);
    faults_release(&faults);
}

/* Puts `value`, JSON text, at /a/b/c; NULL takes it away. */
static void
change(const char *pointer, const char *value)
{
    char *place = memory_copy(NULL, pointer + 1);
    char *last = strrchr(place, '/');
    json_t *object = root;
    char *name, *rest;

    if (last != NULL) {
        *last = '\0';
        for (name = strtok_r(place, "/", &rest); name != NULL; name = strtok_r(NULL, "/", &rest)) {
            object = json_is_array(object) ? json_array_get(object, (size_t)atoi(name))
                                           : json_object_get(object, name);
            ck_assert_msg(object != NULL, "%s", pointer);
        }
    }
    name = last == NULL ? place : last + 1;
    if (value == NULL) {
        ck_assert_int_eq(json_object_del(object, name), 0);
    } else {
        json_object_set_new(object, name, json_loads(value, JSON_DECODE_ANY, NULL));
    }
    talloc_free(place);
}

static int
read_it(void)
{
    char *text = json_dumps(root, 0);
    int rc = config_read(text, strlen(text), "/etc/valley/hutbell.json", &config, &faults);

    free(text);
    return rc;
}

static const char *
all_faults(void *arena)
{
    char *text = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < faults.count; i++) {
        memory_append(&text, "%s\n", faults.list[i].text);
    }
    return text;
}

/* Exactly one fault, at this pointer, that holds this text. */
static void
refused(const char *pointer, const char *holds)
{
    void *arena = talloc_new(NULL);
    const char *where = memory_format(arena, ": %s: ", pointer);

    ck_assert_int_eq(read_it(), -1);
    ck_assert_ptr_null(config);
    ck_assert_msg(faults.count == 1, "%s", all_faults(arena));
    ck_assert_msg(strstr(faults.list[0].text, where) != NULL, "%s", all_faults(arena));
    ck_assert_msg(strstr(faults.list[0].text, holds) != NULL, "%s", all_faults(arena));
    talloc_free(arena);
}

START_TEST(the_example_is_good_and_says_what_it_seems_to_say)
{
    const struct gateway *valley;

    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_int_eq(config->listen_port, 8020);
    ck_assert(config_listens_on_loopback(config));
    ck_assert_str_eq(config->database, "/etc/valley/hutbell.db");
    ck_assert_str_eq(config->kb_folder, "/etc/valley/../kb");
    ck_assert_str_eq(config->house.emergency_number, "911");
    ck_assert_int_eq(config->house.emergency_reading, 85);
    ck_assert_uint_eq(config->staff_count, 2);
    ck_assert_str_eq(config->staff[1].phone, "+12085550191");
    ck_assert_int_eq(config->alert_times[ALERT_EMERGENCY].everyone_s, 300);
    ck_assert_int_eq(config->alert_times[ALERT_URGENT].recheck_s, 900);
    ck_assert_str_eq(config->reply_gateway, "valley");
    valley = config_gateway(config, "valley");
    ck_assert_ptr_nonnull(valley);
    ck_assert_ptr_null(config_gateway(config, "elsewhere"));
    ck_assert_int_eq(valley->authentication.kind, AUTHENTICATION_STANDARD_WEBHOOKS);
    ck_assert_str_eq(valley->message.sender, "/data/from");
    ck_assert_uint_eq(valley->delivery.word_count, 3);
    ck_assert_int_eq(valley->delivery.words[1].status, DELIVERY_DELIVERED);
    ck_assert_ptr_nonnull(strstr(valley->send.body_json, "{text}"));
    ck_assert_str_eq(config->ring_service, "bell");
    ck_assert_uint_eq(config->rings[0].report.word_count, 6);
    ck_assert_int_eq(config->rings[0].report.words[1].result, RING_VOICEMAIL);
    ck_assert_int_eq(config->staff[0].road_from[ROAD_WEBHOOK], ALERT_EMERGENCY);
    ck_assert_str_eq(config->staff[0].address, "robin@larkspur.example");
    ck_assert_int_eq(config->line_test.at_minutes, 600);
    ck_assert_str_eq(config->line_test.to, "+12085550100");
    ck_assert_int_eq(config->rota->weeks, 2);
    ck_assert_uint_eq(config->rota->turn_count, 2);
    ck_assert_uint_eq(config->rota->swap_count, 1);
    ck_assert_int_eq(config->log_level, LOG_INFO);
    ck_assert_int_eq(config->played_start_utc_s, 0);
}
END_TEST

START_TEST(what_may_be_left_out_gets_its_default)
{
    static const char *const optional[] = {
        "/limits", "/log",           "/alert_times",   "/cache_folder",
        "/listen", "/reply_gateway", "/rings",         "/ring_service",
        "/mail",   "/line_test",     "/ping",          "/disk",
        "/rota",   "/office_hours",  "/staff/0/roads", "/gateways/valley/delivery"};
    size_t i;

    for (i = 0; i < sizeof(optional) / sizeof(optional[0]); i++) {
        change(optional[i], NULL);
    }
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_str_eq(config->listen_address, "127.0.0.1");
    ck_assert_str_eq(config->cache_folder, "/etc/valley/cache");
    ck_assert_int_eq(config->limits.request_s, 10);
    ck_assert_int_eq(config->limits.repeat_keep_s, 604800);
    ck_assert_int_eq(config->alert_times[ALERT_EMERGENCY].next_s, 120);
    ck_assert_str_eq(config->reply_gateway, "valley");
    ck_assert(!config->gateways[0].delivery.configured);
    ck_assert_ptr_null(config->ring_service);
    ck_assert_ptr_null(config->mail.url);
    ck_assert(!config->line_test.is_on);
    ck_assert_ptr_null(config->ping.url);
    ck_assert_int_eq(config->disk_least_mb, 500);
    ck_assert_ptr_null(config->rota);
    ck_assert_ptr_null(config->office_hours);
    ck_assert_int_eq(config->staff[0].road_from[ROAD_TEXT], ALERT_OFFICE);
    ck_assert_int_eq(config->staff[0].road_from[ROAD_RING], ALERT_URGENT);
}
END_TEST

static const struct {
    const char *pointer, *value; /* the change */
    const char *at, *holds;      /* the fault */
} bad[] = {
    {"/nonsense", "1", "/nonsense", "is no key"},
    {"/lisen", "{}", "/lisen", "did you mean \"listen\"?"},
    {"/house/adress", "\"x\"", "/house/adress", "did you mean \"address\"?"},
    {"/house/m~n", "1", "/house/m~0n", "is no key"}, /* RFC 6901, section 3 */
    {"/listen/port", "70000", "/listen/port", "is 70000; expected 0 to 65535"},
    {"/listen/port", "\"80\"", "/listen/port", "is text; expected a whole number"},
    {"/listen/port", "80.5", "/listen/port", "a number with a fraction"},
    {"/listen/address", "\"everywhere\"", "/listen/address", "is no IP address"},
    {"/listen/public_url", "\"texts.example\"", "/listen/public_url", "https://"},
    {"/limits", "7", "/limits", "expected an object"},
    {"/limits/request_s", "0", "/limits/request_s", "expected 1 to 300"},
    {"/database", "null", "/database", "is null; expected text"},
    {"/database", NULL, "/database", "is missing"},
    {"/zone", "\"Valley/Nowhere\"", "/zone", "Valley/Nowhere"},
    {"/country/code", "\"+1\"", "/country/code", "1 to 3 digits"},
    {"/house/phone", "\"\"", "/house/phone", "has 0 bytes"},
    {"/house/phone", "\"the office\"", "/house/phone", "a number to dial"},
    {"/house/emergency_number", "\"nine one one\"", "/house/emergency_number", "digits only"},
    {"/house/emergency_reading", "99", "/house/emergency_reading", "expected 50 to 95"},
    {"/reply_gateway", "\"hill\"", "/reply_gateway", "none of /gateways"},
    {"/staff", "[]", "/staff", "at least one person"},
    {"/staff",
     "[{\"name\": \"Robin\", \"phone\": \"INFO\"}, {\"name\": \"Kim\", \"phone\": "
     "\"+12085550191\"}]",
     "/staff/0/phone", "is no phone number"},
    {"/staff",
     "[{\"name\": \"Robin\", \"phone\": \"208-555-0190\"}, {\"name\": \"Kim\", \"phone\": "
     "\"+12085550190\"}]",
     "/staff/1/phone", "also the number of /staff/0"},
    {"/alert_times/emergency/everyone_s", "60", "/alert_times/emergency/everyone_s",
     "must reach somebody"},
    {"/alert_times/urgent/next_s", "0", "/alert_times/urgent/everyone_s", "must reach somebody"},
    {"/log/level", "\"loud\"", "/log/level", "\"error\", \"warning\", \"info\", \"debug\""},
    {"/played_clock", "{\"start\": \"yesterday\"}", "/played_clock/start", "RFC 3339"},
    {"/gateways", "{}", "/gateways", "at least one gateway"},
    {"/gateways/valley/authentication", NULL, "/gateways/valley/authentication", "is missing"},
    {"/gateways/valley/authentication/secrets", NULL, "/gateways/valley/authentication/secrets",
     "is missing"},
    {"/gateways/valley/authentication/secrets", "[\"whsec_dG9vIHNob3J0\"]",
     "/gateways/valley/authentication/secrets/0", "24 to 64 bytes"},
    {"/gateways/valley/authentication", "{\"kind\": \"bearer\", \"secrets\": [\"short\"]}",
     "/gateways/valley/authentication/secrets/0", "at least 12 bytes"},
    {"/gateways/valley/authentication", "{\"kind\": \"basic\", \"secrets\": [\"no colon in it\"]}",
     "/gateways/valley/authentication/secrets/0", "user:password"},
    {"/gateways/valley/authentication",
     "{\"kind\": \"hmac-sha256\", \"secrets\": [\"0123456789abcdef\"]}",
     "/gateways/valley/authentication/header", "is missing"},
    {"/gateways/valley/authentication",
     "{\"kind\": \"hmac-sha256\", \"secrets\": [\"0123456789abcdef\"], \"header\": \"X\", "
     "\"signed_over\": \"{url}\"}",
     "/gateways/valley/authentication/signed_over", "would not be signed"},
    {"/gateways/valley/authentication",
     "{\"kind\": \"hmac-sha256\", \"secrets\": [\"0123456789abcdef\"], \"header\": \"X\", "
     "\"signed_over\": \"{bdy}\"}",
     "/gateways/valley/authentication/signed_over", "{bdy} is unknown"},
    {"/gateways/valley/message/sender", "\"from\"", "/gateways/valley/message/sender",
     "no JSON Pointer"},
    {"/gateways/valley/message/text", NULL, "/gateways/valley/message/text", "is missing"},
    {"/gateways/valley/delivery/words/lost", "\"faild\"", "/gateways/valley/delivery/words/lost",
     "\"failed\""},
    {"/gateways/valley/send/url", "\"ftp://gateway.example\"", "/gateways/valley/send/url",
     "https://"},
    {"/gateways/valley/send/json", "{\"to\": \"{to}\"}", "/gateways/valley/send", "{text}"},
    {"/gateways/valley/send/json", "{\"to\": \"{too} {text}\"}", "/gateways/valley/send/json",
     "{too}"},
    {"/gateways/valley/send/form", "{\"to\": \"{to}\"}", "/gateways/valley/send", "both json"},
    {"/gateways/valley/send/headers", "{\"X\": \"{text}\"}", "/gateways/valley/send/headers/X",
     "body"},
    {"/gateways/valley/send/timeout_ms", "-1", "/gateways/valley/send/timeout_ms", "is -1"},
    {"/rings/bell/report", NULL, "/rings/bell/report", "is missing"},
    {"/rings/bell/report/ring", NULL, "/rings/bell/report/ring", "is missing"},
    {"/rings/bell/report/pressed", "\"key\"", "/rings/bell/report/pressed", "no JSON Pointer"},
    {"/rings/bell/report/words", NULL, "/rings/bell/report/words", "both or neither"},
    {"/rings/bell/report/words/busy", "\"engaged\"", "/rings/bell/report/words/busy",
     "\"unanswered\""},
    {"/rings/bell/send/json", "{\"to\": \"{to}\"}", "/rings/bell/send", "{text}"},
    {"/ring_service", "\"gong\"", "/ring_service", "none of /rings"},
    {"/mail/url", "\"mail.example\"", "/mail/url", "smtps://"},
    {"/mail/from", "\"Hut <bell@x.example>\"", "/mail/from", "is no e-mail address"},
    {"/mail/password", NULL, "/mail/password", "user and password, or neither"},
    {"/mail", NULL, "/staff/0/roads/e-mail", "needs a mail server"},
    {"/listen/public_url", NULL, "/listen/public_url", "hold a link that begins with it"},
    {"/staff/0/roads/ring/from", "\"always\"", "/staff/0/roads/ring/from", "\"never\""},
    {"/staff/0/roads/e-mail/address", "\"robin\"", "/staff/0/roads/e-mail/address",
     "is no e-mail address"},
    {"/staff/0/roads/e-mail/address", "\"a@b.example\\r\\nBcc: c@d.example\"",
     "/staff/0/roads/e-mail/address", "is no e-mail address"},
    {"/staff/0/roads/webhook/url", NULL, "/staff/0/roads/webhook/url", "is missing"},
    {"/staff/0/roads/webhook/secret", "\"whsec_dG9vIHNob3J0\"", "/staff/0/roads/webhook/secret",
     "24 to 64 bytes"},
    {"/staff/0/roads", "{\"text\": {\"from\": \"never\"}}", "/staff/0/roads", "all switched off"},
    {"/line_test/at", "\"25:00\"", "/line_test/at", "00:00 to 23:59"},
    {"/line_test/at", "\"9:75\"", "/line_test/at", "00:00 to 23:59"},
    {"/line_test/to", "\"INFO\"", "/line_test/to", "is no phone number"},
    {"/ping/url", "\"watch.example\"", "/ping/url", "https://"},
    {"/ping/every_s", "1", "/ping/every_s", "expected 10 to 86400"},
    {"/disk/least_mb", "-1", "/disk/least_mb", "expected 0 to"},
    {"/rota/first_week", NULL, "/rota/first_week", "is missing"},
    {"/rota/first_week", "\"2026-02-30\"", "/rota/first_week", "expected a day"},
    {"/rota/first_week", "\"2026-02-01 09:00\"", "/rota/first_week", "expected a day"},
    {"/rota/turns", "[]", "/rota/turns", "is empty; expected a list"},
    {"/rota/turns", NULL, "/rota/turns", "is missing"},
    {"/rota/turns/0/day", "\"munday\"", "/rota/turns/0/day", "\"monday\""},
    {"/rota/turns/0/at", "\"24:00\"", "/rota/turns/0/at", "00:00 to 23:59"},
    {"/rota/turns/0/at", NULL, "/rota/turns/0/at", "is missing"},
    {"/rota/turns/1/week", "3", "/rota/turns/1/week", "the cycle has 2"},
    {"/rota/turns/1/week", "1", "/rota/turns/1", "starts when another turn does"},
    {"/rota/turns/0/line", "[]", "/rota/turns/0/line", "expected a list of 1"},
    {"/rota/turns/0/line", "[\"Robyn\"]", "/rota/turns/0/line/0", "did you mean \"Robin\"?"},
    {"/rota/turns/0/line", "[\"Zebulon\"]", "/rota/turns/0/line/0", "nobody of /staff; list them"},
    {"/rota/turns/0/line", "[\"Kim\", \"kim\"]", "/rota/turns/0/line/1", "name each person once"},
    {"/rota/swaps/0/from", "\"3/7/2026\"", "/rota/swaps/0/from", "\"2026-03-07 20:00\""},
    {"/rota/swaps/0/from", "\"2026-03-09\"", "/rota/swaps/0/from", "a day and a time"},
    {"/rota/swaps/0/until", "\"2026-03-07 20:00\"", "/rota/swaps/0/until", "is not after"},
    {"/office_hours/monday", "\"8-18\"", "/office_hours/monday", "\"08:00-18:00\""},
    {"/office_hours/monday", "\"18:00-08:00\"", "/office_hours/monday", "opens and closes"},
    {"/office_hours/munday", "\"08:00-18:00\"", "/office_hours/munday", "did you mean"},
    {"/office_hours", "{\"holidays\": []}", "/office_hours", "names no day"},
    {"/office_hours/holidays", "[\"Christmas\"]", "/office_hours/holidays/0", "expected a day"},
};

START_TEST(two_of_staff_may_not_have_the_same_name)
{
    change("/rota", NULL); /* it names them */
    change("/staff/1/name", "\"robin\"");
    refused("/staff/1/name", "also the name of /staff/0");
}
END_TEST

START_TEST(a_turn_without_a_week_comes_in_each)
{
    change("/rota/turns/0/week", NULL);
    change("/rota/turns/1/day", "\"friday\"");
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_uint_eq(config->rota->turn_count, 3);
    ck_assert_int_eq(config->rota->turns[0].week, 0);
    ck_assert_int_eq(config->rota->turns[1].week, 1);
    ck_assert_int_eq(config->rota->turns[1].weekday, 1);
}
END_TEST

START_TEST(the_first_week_begins_on_the_sunday_before_the_day_that_is_told)
{
    change("/rota/first_week", "\"2026-02-07\""); /* a Saturday */
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_int_eq(config->rota->first_day, zone_days(2026, 2, 1));
}
END_TEST

START_TEST(a_day_that_is_not_named_is_closed)
{
    change("/office_hours/sunday", NULL);
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_int_eq(config->office_hours->days[0].open, config->office_hours->days[0].close);
    ck_assert_int_eq(config->office_hours->days[1].open, 480);
    ck_assert_int_eq(config->office_hours->days[1].close, 1080);
    ck_assert_uint_eq(config->office_hours->holiday_count, 1);
    ck_assert_int_eq(config->office_hours->holidays[0], zone_days(2026, 12, 25));
}
END_TEST

START_TEST(hours_and_the_way_back_are_read_in_both_languages)
{
    const struct house *house;

    change("/house/hours_es", "\"de 8 am a 6 pm\"");
    change("/house/return_how_es", "\"Llévelo al mostrador.\"");
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    house = &config->house;
    ck_assert_str_eq(house->hours[LANGUAGE_EN], "8 am to 6 pm, every day");
    ck_assert_str_eq(house->hours[LANGUAGE_ES], "de 8 am a 6 pm");
    ck_assert_ptr_nonnull(strstr(house->return_how[LANGUAGE_EN], "counter"));
    ck_assert_str_eq(house->return_how[LANGUAGE_ES], "Llévelo al mostrador.");
}
END_TEST

START_TEST(an_office_may_have_them_in_english_only)
{
    change("/house/hours_es", NULL);
    change("/house/return_how_es", NULL);
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    ck_assert_ptr_null(config->house.hours[LANGUAGE_ES]);
    ck_assert_ptr_null(config->house.return_how[LANGUAGE_ES]);
}
END_TEST

START_TEST(a_ring_without_a_telephone_service_is_a_fault)
{
    change("/rings", NULL);
    change("/ring_service", NULL);
    refused("/staff/0/roads/ring", "needs a telephone service");
}
END_TEST

START_TEST(each_fault_has_its_pointer_and_its_remedy)
{
    change(bad[_i].pointer, bad[_i].value);
    refused(bad[_i].at, bad[_i].holds);
}
END_TEST

START_TEST(all_faults_are_told_at_once)
{
    size_t i;

    change("/nonsense", "1");
    change("/listen/port", "70000");
    change("/database", "5");
    change("/zone", "\"Valley/Nowhere\"");
    change("/gateways/valley/send/timeout_ms", "-1");
    ck_assert_int_eq(read_it(), -1);
    ck_assert_uint_eq(faults.count, 5);
    for (i = 0; i < faults.count; i++) {
        ck_assert_ptr_nonnull(strstr(faults.list[i].text, "/etc/valley/hutbell.json: /"));
    }
}
END_TEST

START_TEST(a_gateway_without_proof_is_for_loopback_only)
{
    change("/gateways/valley/authentication", "{\"kind\": \"none\"}");
    ck_assert_msg(read_it() == 0, "%s", all_faults(NULL));
    config_free(config);
    config = NULL;
    change("/listen/address", "\"0.0.0.0\"");
    refused("/gateways/valley/authentication/kind", "anyone could write as anyone");
}
END_TEST

START_TEST(loopback_is_told_from_other_addresses)
{
    /* RFC 1122, 3.2.1.3 (127/8); RFC 4291, 2.5.3 (::1) */
    static const struct {
        const char *address;
        bool is_loopback;
    } addresses[] = {{"127.0.0.1", true}, {"127.8.9.1", true}, {"::1", true},
                     {"localhost", true}, {"0.0.0.0", false},  {"::", false},
                     {"128.0.0.1", false}};
    struct config one = {.listen_address = addresses[_i].address};

    ck_assert_int_eq(config_listens_on_loopback(&one), addresses[_i].is_loopback);
}
END_TEST

START_TEST(a_secret_is_never_repeated_in_a_fault)
{
    static const char broken[] = "{\"gateways\": {\"valley\": {\"authentication\": {\"secrets\": "
                                 "[\"whsec_c2VjcmV0\" \"whsec_c2VjcmV0\"]}}}}";

    change("/gateways/valley/authentication/secrets", "[\"whsec_c2VjcmV0\"]");
    ck_assert_int_eq(read_it(), -1);
    ck_assert_int_eq(config_read(broken, strlen(broken), "x.json", &config, &faults), -1);
    ck_assert_uint_eq(faults.count, 2);
    ck_assert_ptr_null(strstr(faults.list[0].text, "c2VjcmV0"));
    ck_assert_ptr_null(strstr(faults.list[1].text, "c2VjcmV0"));
}
END_TEST

START_TEST(a_key_given_twice_is_named)
{
    static const char twice[] = "{\"zone\": \"a\",\n\"zone\": \"b\"}";

    ck_assert_int_eq(config_read(twice, strlen(twice), "x.json", &config, &faults), -1);
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "x.json:2: "));
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "zone"));
}
END_TEST

START_TEST(a_file_that_is_not_there_is_named)
{
    ck_assert_int_eq(config_load("/nowhere/hutbell.json", &config, &faults), -1);
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "/nowhere/hutbell.json"));
}
END_TEST

START_TEST(the_manual_explains_every_key)
{
    char *path = source_file(NULL, "config/README.md");
    char *explained = NULL;
    size_t length = 0;
    FILE *memory = open_memstream(&explained, &length);
    FILE *file = fopen(path, "r");
    char *manual = calloc(1, 65536);

    config_explain(memory);
    (void)fclose(memory);
    ck_assert_ptr_nonnull(file);
    ck_assert_uint_gt(fread(manual, 1, 65535, file), 0);
    (void)fclose(file);
    ck_assert_uint_gt(length, 1000);
    ck_assert_msg(strstr(manual, explained) != NULL,
                  "config/README.md is to end with what config_explain() prints");
    free(manual);
    free(explained);
    talloc_free(path);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("config");
    TCase *tests = tcase_create("config");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, the_example_is_good_and_says_what_it_seems_to_say);
    tcase_add_test(tests, what_may_be_left_out_gets_its_default);
    tcase_add_loop_test(tests, each_fault_has_its_pointer_and_its_remedy, 0,
                        (int)(sizeof(bad) / sizeof(bad[0])));
    tcase_add_test(tests, two_of_staff_may_not_have_the_same_name);
    tcase_add_test(tests, a_turn_without_a_week_comes_in_each);
    tcase_add_test(tests, the_first_week_begins_on_the_sunday_before_the_day_that_is_told);
    tcase_add_test(tests, a_day_that_is_not_named_is_closed);
    tcase_add_test(tests, hours_and_the_way_back_are_read_in_both_languages);
    tcase_add_test(tests, an_office_may_have_them_in_english_only);
    tcase_add_test(tests, a_ring_without_a_telephone_service_is_a_fault);
    tcase_add_test(tests, all_faults_are_told_at_once);
    tcase_add_test(tests, a_gateway_without_proof_is_for_loopback_only);
    tcase_add_loop_test(tests, loopback_is_told_from_other_addresses, 0, 7);
    tcase_add_test(tests, a_secret_is_never_repeated_in_a_fault);
    tcase_add_test(tests, a_key_given_twice_is_named);
    tcase_add_test(tests, a_file_that_is_not_there_is_named);
    tcase_add_test(tests, the_manual_explains_every_key);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
