/* Equipment files: what is read, and that nothing impossible gets in. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "content.h"
#include "equipment_read.h"
#include "memory.h"

static void *arena;
static struct faults faults;
static struct equipment equipment;

static void
begin(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    faults_release(&faults);
    talloc_free(arena);
}

static int
read_text(const char *text)
{
    struct content_file file = {"equipment/wren.json", text, strlen(text)};

    return equipment_read(arena, &file, "wren", &equipment, &faults);
}

static bool
has_fault(const char *words)
{
    size_t i;

    for (i = 0; i < faults.count; i++) {
        if (strstr(faults.list[i].text, words) != NULL) {
            return true;
        }
    }
    return false;
}

/* An invented unit. */
static const char whole[] =
    "{\"name\":\"Wren\",\"run_times\":["
    "{\"mode\":\"pulse\",\"setting\":2,\"minutes\":[111,132],\"battery\":\"new\",\"figure\":"
    "\"maker\","
    "\"watts\":20},"
    "{\"mode\":\"pulse\",\"setting\":2.5,\"minutes\":[85,102],\"battery\":\"fleet\",\"figure\":"
    "\"office\"}],"
    "\"gauge\":{\"how\":\"Press.\",\"steps\":[{\"lights\":0,\"percent\":[0,10]},{\"lights\":1,"
    "\"percent\":[10,100]}]},"
    "\"swap\":{\"how\":\"Pull.\",\"oxygen_stops\":true},"
    "\"battery\":{\"rated_wh\":46.8,\"volts\":14.4,\"amp_hours\":3.25,\"held\":2,"
    "\"retirement_health\":75},"
    "\"charging\":{\"off\":{\"to_80\":[70,85],\"to_full\":[115,140]},"
    "\"apart\":{\"to_80\":[60,75],\"to_full\":[100,125]}},"
    "\"car\":{\"runs\":true,\"charges\":true,\"both_at_once\":false,\"amps_limit\":7},"
    "\"needs_wall\":[\"continuous 3\"],\"no_breath\":\"It beeps.\","
    "\"alarms\":[{\"shows\":\"HOT\",\"meaning\":\"Too hot.\",\"oxygen_stops\":true}],"
    "\"tube_feet\":{\"pulse\":7},\"supply_volts\":[100,240],\"altitude_ft\":12000,"
    "\"celsius\":{\"running\":[5,40]},\"cold\":[{\"celsius\":20,\"percent\":100},{\"celsius\":-10,"
    "\"percent\":70}],\"aircraft_label\":true,\"weight_grams\":2300,\"sound_db\":41}";

START_TEST(a_whole_file_is_read)
{
    struct percent band = {-1, -1};

    ck_assert_int_eq(read_text(whole), 0);
    ck_assert_str_eq(equipment.name, "Wren");
    ck_assert_str_eq(equipment.id, "wren");
    ck_assert_uint_eq(equipment.run_time_count, 2);
    ck_assert_int_eq(equipment_run_time(&equipment, MODE_PULSE, 20)->lasts.low, 111);
    ck_assert(equipment_run_time(&equipment, MODE_PULSE, 20)->makers_figure);
    ck_assert(!equipment_run_time(&equipment, MODE_PULSE, 25)->of_new_battery);
    ck_assert_ptr_null(equipment_run_time(&equipment, MODE_PULSE, 22));
    ck_assert_ptr_null(equipment_run_time(&equipment, MODE_CONTINUOUS, 20));
    ck_assert(equipment_gauge_band(&equipment, 1, &band));
    ck_assert_int_eq(band.low, 10);
    ck_assert(!equipment_gauge_band(&equipment, 2, &band));
    ck_assert_int_eq(equipment.batteries_held, 2);
    ck_assert(equipment.charging_off.known);
    ck_assert(!equipment.charging_running.known);
    ck_assert_int_eq(equipment.charging_apart.to_full.high, 125);
    ck_assert_str_eq(equipment.needs_wall[0], "continuous 3");
    ck_assert(equipment.car.known && equipment.car.charges && !equipment.car.both_at_once);
    ck_assert_int_eq(equipment.cold[1].percent, 70);
    ck_assert(!equipment.charging.known);
}
END_TEST

START_TEST(what_the_file_lacks_is_not_known)
{
    ck_assert_int_eq(read_text("{\"name\":\"W\",\"battery\":{\"retirement_health\":80}}"), 0);
    ck_assert_uint_eq(equipment.run_time_count, 0);
    ck_assert(!equipment.car.known);
    ck_assert_ptr_null(equipment.no_breath);
    ck_assert_int_eq(equipment.batteries_held, 1);
    ck_assert_int_eq(equipment.altitude_ft, 0);
}
END_TEST

#define NAME "{\"name\":\"W\",\"battery\":{\"retirement_health\":80}"
#define ROW(setting, low, high)                                                                    \
    "{\"mode\":\"pulse\",\"setting\":" setting ",\"minutes\":[" low "," high                       \
    "],\"battery\":\"new\",\"figure\":\"maker\"}"

static const struct {
    const char *text, *fault;
} faulty[] = {
    {"[]", "wren.json: the whole file: found an array; expected an object"},
    {"{\"name\":\"W\",", "wren.json:1: column"},
    {"{\"name\":\"W\",\"name\":\"V\"}", "duplicate object key"},
    {"{\"battery\":{\"retirement_health\":80}}", "/name: missing"},
    {"{\"name\":\"W\"}", "/battery: missing"},
    {"{\"name\":\"W\",\"battery\":{}}", "/battery/retirement_health: missing"},
    {NAME ",\"nmae\":1}", "/nmae: unknown key"},
    {NAME ",\"a/b~c\":1}", "/a~1b~0c: unknown key"}, /* RFC 6901, section 3 */
    {NAME ",\"weight_grams\":\"2 kg\"}", "/weight_grams: found a string; expected an integer"},
    {NAME ",\"weight_grams\":-1}", "/weight_grams: found -1; expected an integer 100 to"},
    {NAME ",\"aircraft_label\":1}", "/aircraft_label: found an integer; expected true or false"},
    {NAME ",\"run_times\":[" ROW("2", "132", "111") "]}", "/run_times/0/minutes: found [132, 111]"},
    {NAME ",\"run_times\":[" ROW("2.25", "1", "2") "]}", "/run_times/0/setting: found 2.25"},
    {NAME ",\"run_times\":[" ROW("2", "1", "2") "," ROW("2", "1", "2") "]}",
     "/run_times/1: pulse 2 is there twice"},
    {NAME ",\"run_times\":[" ROW("2", "90", "99") "," ROW("3", "91", "99") "]}",
     "/run_times/1: pulse 3 would last longer than pulse 2"},
    {NAME ",\"run_times\":[{\"mode\":\"fast\"}]}", "/run_times/0/mode: found \"fast\""},
    {NAME ",\"run_times\":[]}", "/run_times: found 0 elements"},
    {NAME ",\"gauge\":{\"how\":\"x\",\"steps\":[{\"lights\":2,\"percent\":[0,10]},{\"lights\":1,"
          "\"percent\":[10,100]}]}}",
     "/gauge/steps/1: expected more lights"},
    {NAME ",\"car\":{\"runs\":true,\"charges\":false,\"both_at_once\":true}}",
     "/car/both_at_once: found true"},
    {NAME ",\"needs_wall\":[\"continuous three\"]}", "/needs_wall/0: expected a mode"},
    {NAME ",\"charging\":{\"off\":{\"to_80\":[90,100],\"to_full\":[80,120]}}}",
     "/charging/off: to_full is shorter"},
    {NAME ",\"cold\":[{\"celsius\":0,\"percent\":80},{\"celsius\":10,\"percent\":90}]}",
     "/cold/1: expected to be colder"},
    {NAME ",\"tube_feet\":{\"pulse\":0}}", "/tube_feet/pulse: found 0"},
};

START_TEST(a_faulty_file_is_refused_with_its_pointer)
{
    ck_assert_int_eq(read_text(faulty[_i].text), -1);
    ck_assert_msg(has_fault(faulty[_i].fault), "wanted \"%s\", got \"%s\"", faulty[_i].fault,
                  faults.count > 0 ? faults.list[0].text : "nothing");
}
END_TEST

START_TEST(all_faults_of_a_file_come_at_once)
{
    ck_assert_int_eq(read_text("{\"nmae\":1,\"weight_grams\":0,\"cold\":{}}"), -1);
    ck_assert(has_fault("/nmae"));
    ck_assert(has_fault("/weight_grams"));
    ck_assert(has_fault("/cold"));
    ck_assert(has_fault("/name: missing"));
    ck_assert(has_fault("/battery: missing"));
}
END_TEST

/* Watt-hours are volts times amp-hours (facts A3): 14.4 x 6.8 = 97.92, 14.8 x 6.756 = 99.99. */
START_TEST(watt_hours_must_fit_volts_and_amp_hours)
{
    ck_assert_int_eq(read_text("{\"name\":\"W\",\"battery\":{\"retirement_health\":80,\"rated_wh\":"
                               "98,\"volts\":14.4,\"amp_hours\":6.8}}"),
                     0);
    ck_assert_int_eq(read_text("{\"name\":\"W\",\"battery\":{\"retirement_health\":80,\"rated_wh\":"
                               "100,\"volts\":14.8,\"amp_hours\":6.756}}"),
                     0);
    ck_assert_int_eq(read_text("{\"name\":\"W\",\"battery\":{\"retirement_health\":80,\"rated_wh\":"
                               "98,\"volts\":14.4,\"amp_hours\":3.4}}"),
                     -1);
    ck_assert(has_fault("/battery/rated_wh: found 98; 14.4 volts times 3.4 amp-hours make 48.96"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("kb_equipment");
    TCase *tests = tcase_create("kb_equipment");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_whole_file_is_read);
    tcase_add_test(tests, what_the_file_lacks_is_not_known);
    tcase_add_loop_test(tests, a_faulty_file_is_refused_with_its_pointer, 0,
                        sizeof(faulty) / sizeof(faulty[0]));
    tcase_add_test(tests, all_faults_of_a_file_come_at_once);
    tcase_add_test(tests, watt_hours_must_fit_volts_and_amp_hours);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
