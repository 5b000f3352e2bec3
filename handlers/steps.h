/*
 * What can happen to a text, one function each, in the file of its name. handlers.c holds their
 * order. Each looks at what is asked and either settles it (true; the verdict has what to say and
 * to do) or leaves the verdict as it is (false; the next one is asked).
 */
#ifndef STEPS_H
#define STEPS_H

#include "asked.h"
#include "verdict.h"

/* ---- the whole text ------------------------------------------------------------------------- */

/*
 * Signs and oximeter values, in the text and joined with the sender's texts of the last 3 minutes.
 * True if an emergency leaves nothing more to be said; a lesser sign adds its answer and is false.
 * From here on the language is that of the sign.
 */
bool signs_decide(struct asked *whole, struct verdict *verdict);
/* "Is oxygen flowing again?" answered: NO, said in any way, is an emergency, YES closes it. */
bool flowing_decide(const struct asked *whole, struct verdict *verdict);
/* Staff's own texts: "MINE 12", "TALK 12 words", "LINK 12 R-34"; always true for staff. */
bool staff_decide(const struct asked *whole, struct verdict *verdict);
/* What was told before is there again, or got worse: an emergency, from now on anew. */
bool worse_again_decide(const struct asked *whole, struct verdict *verdict);
/* While we wait whether oxygen flows: nobody answers them, and they knock again. */
bool unheard_decide(const struct asked *whole, struct verdict *verdict);
/* "Worse" and nothing more, and nothing was told before: somebody is unwell; or it may be so. */
bool worse_alone_decide(const struct asked *whole, struct verdict *verdict);
/* A consent keyword alone: STOP, START, HELP and their like in both languages. */
bool consent_decide(const struct asked *whole, struct verdict *verdict);
/* A cry for help, in more than the carrier's one word, and nothing else; in which language. */
bool cry_told(const struct asked *whole, bool *is_spanish);
/* That somebody is in hospice care or is not to be resuscitated, and nothing asked: staff hear it.
 */
bool hospice_decide(const struct asked *whole, struct verdict *verdict);
#define HOSPICE_REASON "hospice"
/* An active renter writes in a language that we do not speak. */
bool foreign_decide(const struct asked *whole, struct verdict *verdict);
/* A person leads this conversation: silence. */
bool in_charge_decide(const struct asked *whole, struct verdict *verdict);
/* A death was told and the alert about it is open, or staff have told it: silence, and a person
 * hears of the text. */
bool death_decide(const struct asked *whole, struct verdict *verdict);
/* Who is threatened asks not to be answered, and shows no sign: silence, and a person is called. */
bool no_reply_decide(const struct asked *whole, struct verdict *verdict);
/* Another machine writes, or gives our own text back: silence. */
bool machine_decide(const struct asked *whole, struct verdict *verdict);
/* No emergency is open, and helpers who were called are told not to come, or not to be wanted. */
bool help_fails_decide(const struct asked *whole, struct verdict *verdict);
/* YES, and nothing else, to "trouble breathing? call 911" of an alert that is open. */
bool danger_yes_decide(const struct asked *whole, struct verdict *verdict);
/* An emergency is open: whether 911 was called, then power and backup only. If it is told to be
 * over or is hours old, staff hear that they wrote, and it is false. */
bool open_emergency_decide(const struct asked *whole, struct verdict *verdict);

/* ---- each question of it --------------------------------------------------------------------- */

/* An answer to what we asked. */
bool open_question_decide(const struct asked *asked, struct verdict *verdict);
/* The whole text goes on with the sum that was answered last: worked out again with what it tells
 * anew. */
bool follow_up_decide(const struct asked *whole, struct verdict *verdict);
/* "Did that", "is that ok?" behind an answer of ours. */
bool done_so_decide(const struct asked *whole, struct verdict *verdict);
/* Thanks, greetings, emoji: a short reply or none. */
bool courtesy_decide(const struct asked *asked, struct verdict *verdict);
/* The same in words that are not listed, where nothing else was found and no topic is sure: a short
 * reply that names the emergency number. Never while an alert or a question is open. */
bool courtesy_like_decide(const struct asked *asked, struct verdict *verdict);
/* The battery or the cylinder is told to be empty: a person, and whether oxygen flows. */
bool ran_out_decide(const struct asked *asked, struct verdict *verdict);
/* A battery that is empty long before it should be. */
bool weak_battery_decide(const struct asked *asked, struct verdict *verdict);
/* There is no plug where they are. */
bool plug_decide(const struct asked *asked, struct verdict *verdict);
/* "Text me when 30 min are left", "remind me at 9 pm", "cancel the reminder". */
bool reminder_decide(const struct asked *asked, struct verdict *verdict);
/* When batteries are full, and a plan for the night. */
bool charge_time_decide(const struct asked *asked, struct verdict *verdict);
/* Batteries for a flight. */
bool fly_decide(const struct asked *asked, struct verdict *verdict);
/* How long a cylinder lasts. */
bool cylinder_left_decide(const struct asked *asked, struct verdict *verdict);
/* That, or it was asked in general, and the topic asked for the figures. */
bool cylinder_left_was_asked(const struct asked *before, struct verdict *verdict);
/* What an inverter, a generator or a power station must give; seat power counts as nothing. */
bool other_power_decide(const struct asked *asked, struct verdict *verdict);
/* A percentage with nothing beside it: a battery's, or a reading? */
bool bare_percent_decide(const struct asked *asked, struct verdict *verdict);
/* Watt-hours of the batteries, for an airline. */
bool watt_hours_decide(const struct asked *asked, struct verdict *verdict);
/* Hours left, and how long a battery lasts, as numbers. */
bool power_decide(const struct asked *asked, struct verdict *verdict);
/* A word or sign on the display that the equipment file lists. */
bool display_decide(const struct asked *asked, struct verdict *verdict);
/* The emergency number, or where a hospital is. */
bool emergency_number_decide(const struct asked *asked, struct verdict *verdict);
/* What was wrong is over, or help is there, and the text tells nothing else: thanks, and what to
 * look at. */
#define IS_OVER_REASON "is-over"
/* They have called the emergency number, or help is on its way. */
#define CALLED_REASON "called-911"
bool is_over_told(const struct asked *asked);
/* So it sounds, after what may harm later: pills, bad gas. */
bool is_over_too_soon(const struct asked *asked);
/* All of it is words of an all-clear, be it of persons or things and whatever is open. */
bool is_over_of_anything(const struct asked *asked);
/* "Mi papa ya quedo", and nothing else: he is well, or all is lost. */
bool is_over_may_be_lost(const struct asked *asked);
/* What else the text tells beside words of an all-clear; NULL if it has none of these. */
const char *is_over_beside(const struct asked *asked);
/* "94, no, 84" after a low reading: the value that holds, if that is low too; else 0. */
int is_over_still_low(const struct asked *asked);
/* "Sorry, 94 not 84": what was told as a low reading is none. */
bool is_over_corrects_reading(const struct asked *asked);
/* Somebody is named, and others were in the minutes before. */
bool is_over_of_another(const struct asked *asked);
/* The power or the unit came back, in any words, and nothing else is told. */
bool is_over_of_supply(const struct asked *asked);
/* The wish to die that was told is what one says of others, and nothing of oneself. */
bool self_harm_was_of_another(const struct asked *asked);
/* An emergency that is open was told of somebody else than who writes. */
bool is_over_was_of_another(const struct asked *asked);
/* "Wrong finger, its 96" after a low reading, or "its 96" after another such value, and nothing
 * else was told or is. */
bool is_over_reads_well(const struct asked *asked);
/* "It was burnt toast", while nothing but smoke or its smell was told. */
bool is_over_was_cooking(const struct asked *asked);
/* A sign that food which burns may be taken for. */
bool is_over_of_smell(const struct sign *sign);
/* It sounds like it, and may tell that it is there once more, when it began, or of others than
 * those who were called. */
bool is_over_in_doubt(const struct asked *asked);
/* "They're here", and nothing else, of whom nobody told: the ambulance, or the neighbors. */
bool is_over_may_be_others(const struct asked *asked);
bool is_over_decide(const struct asked *asked, struct verdict *verdict);
/* Something is wrong with the unit that no sign caught. */
bool equipment_trouble_decide(const struct asked *asked, struct verdict *verdict);
/* A topic of the kb, or which of two. */
bool topics_decide(const struct asked *asked, struct verdict *verdict);
/* What only the office can do. */
bool office_decide(const struct asked *asked, struct verdict *verdict);
/* Its words stand in the text: a person, another day, a battery more, money; or it surely wants
 * something done. */
bool office_is_asked_for(const struct asked *asked);
/* A carbon monoxide or smoke alarm of the house chirps, or its battery is asked about. */
bool house_alarm_decide(const struct asked *asked, struct verdict *verdict);
/* What the record has as ordered is asked for (ordered_setting.h). */
bool ordered_setting_decide(const struct asked *asked, struct verdict *verdict);
/* Who has the unit asks when they may bring it back. */
bool brings_back_decide(const struct asked *asked, struct verdict *verdict);
/* Nothing answered it: a person will. Always true. */
bool gap_decide(const struct asked *asked, struct verdict *verdict);

/* What watched an older charge is off; or, with the hours left, a reminder is offered, once. */
void reminder_mention(const struct asked *whole, struct verdict *verdict);
/* The charge for a running-out watch that was asked for before: sets it. */
void reminder_watch(const struct asked *asked, struct verdict *verdict, const struct told *told);

/* ---- at the end ------------------------------------------------------------------------------ */

/*
 * More texts come than a person writes (context->limit): what is decided stays so, but only signs,
 * what staff are urgently called about, and the confirmation of an opt-out are answered. The sender
 * is told once and the office hears of it once. No alert above the office's is held back.
 */
void limited_hold(const struct asked *whole, struct verdict *verdict);

/* Who is threatened asked, now or before, not to be answered: no reply goes out, and staff are told
 * so; or not to be called, which staff are told, and a text still goes out. */
void no_reply_hold(const struct asked *whole, struct verdict *verdict);

/* ---- used by several of them ------------------------------------------------------------------
 */

/* Staff link a phone to a rental or end that: "LINK 12 R-34", "UNLINK +1… R-34". */
bool staff_link_decide(const struct asked *whole, struct verdict *verdict);
/* Staff tell a death or take it back: "DIED R-34", "ALIVE R-34". */
bool staff_died_decide(const struct asked *whole, struct verdict *verdict);
/* A person leads this conversation, and the sender is not one of staff. */
bool in_charge_leads(const struct asked *whole);
/* One of staff cannot do their own turn: "Perrin here, cant do tonight, sick". A colleague is told,
 * at once whatever the hour. */
bool staff_absent_told(const struct asked *whole);
bool staff_absent_decide(const struct asked *whole, struct verdict *verdict);
/* If a person leads this conversation: the text goes to them, and of the answers only what must be
 * said stays. */
void in_charge_pass_on(const struct asked *whole, struct verdict *verdict);
/* The record says that the sender is never rung, only texted. */
bool reach_is_by_text(const struct asked *whole);
/* It is a landline: no texts go there. */
bool reach_is_landline(const struct asked *whole);
/* They are blind or read to: words instead of signs (in_words.h). */
bool reach_is_in_words(const struct asked *whole);
/* A reply as it may be said to them: nobody "will call" who must not ring. */
const char *reach_words(const struct asked *whole, const char *text);
/* Wants no more texts, in words of their own: the text says so and nothing else; or it may be meant
 * among other things. */
bool opt_out_is_said(const struct tokens *tokens);
bool opt_out_may_be_meant(const struct tokens *tokens);
/* This text is staff's relay of an alert: its signs are not new ones. */
bool staff_relays(const struct asked *whole);
/* It is no order, and staff speak of a renter in it, not of themselves. */
bool staff_speaks_of_renter(const struct asked *whole);
/* They ask something about a renter and tell nothing, "is the renter on backup", or have something
 * said to them without a word of ours: "tell him to sit down". */
bool staff_asks_of_renter(const struct asked *whole);
/* This sign is none of theirs: they ask about it, or the alert they speak of tells it already. An
 * emergency in plain words that no such alert tells always counts. */
bool staff_says_of_renter(const struct asked *whole, const struct sign_match *match);
/* An earlier text of theirs was an order or such a question: it is not read as one with others. */
bool staff_spoke_of_renter(const struct asked *whole, const char *text);
/* A death was told before, and the alert about it is open or staff have told it. */
bool death_is_told(const struct asked *whole);
/* Somebody is at the end of their life, and nothing tells that they have died. */
bool death_is_only_near(const struct asked *whole);
/* "Yes she's gone. No need to call anyone", and nothing else. */
bool death_is_all_told(const struct asked *whole);
/* A death is told in this text. */
void death_answer(const struct asked *whole, struct verdict *verdict, const struct sign *sign);
/* An alert of the sender's is an emergency and nobody has closed it. */
bool open_emergency_stands(const struct context *context);
/* And the sender has not told that it is over, nor is it hours old: that comes before all else. */
bool open_emergency_is(const struct context *context);
/* They have called the emergency number, or help is coming: "i called 911 they are coming". */
bool open_emergency_is_helped(const struct asked *whole);
/* Introduces somebody, "my mom is 84 and on oxygen", and tells nothing else. */
bool introduces_told(const struct asked *whole);
bool introduces_decide(const struct asked *whole, struct verdict *verdict);
/* We asked whether their number is a reading or an age, and it is a reading: that; else 0. */
int introduces_as_reading(const struct asked *whole);
/* Or it is an age: "no", "that is how old she is". */
bool introduces_is_age(const struct asked *asked);
/* An age closes that question, nothing else; true if the text tells no more. */
bool introduces_answered(const struct asked *asked, struct verdict *verdict);
/* A value was told not long ago, and this text tells another in few words: that; else 0. */
int measured_again(const struct asked *whole);
/* The same without a number: "sigue bajando", "still low". */
bool value_falls_told(const struct asked *whole);
/* How much was taken of a medicine that was asked about not long ago; too much also if they ask for
 * poison control. */
enum dose { DOSE_NONE, DOSE_USUAL, DOSE_TOO_MUCH };
enum dose counted_dose_told(const struct asked *whole);
/* Asks whether to take what no list of words knows. */
bool unknown_medicine_told(const struct asked *whole);
/* They cannot call the emergency number; what is said to that, or to whether Spanish is spoken
 * there, NULL if the text tells neither. */
bool cannot_call_told(const struct asked *asked);
const char *cannot_call_words(const struct asked *asked);
/* What staff are told then, who can: "cannot call: call 911 for them". */
const char *cannot_call_brief(const struct asked *asked);

/* They ask whether we called or will: who asks may wait for us. */
bool calling_asks_whether(const struct asked *asked);
/* They press us, or ask who comes and when. */
bool calling_presses(const struct asked *asked);
/* No ambulance reaches them. */
bool nobody_gets_through_told(const struct asked *asked);
/* Who was called does not come, or says it takes long: "siguen sin llegar". */
bool help_is_late_told(const struct asked *asked);
/* What is said instead of "call 911" to who has called or is with helpers, or of whom they fail;
 * NULL if the text tells none of that. */
const char *help_told_words(const struct asked *asked);
/* Where they are: "cabin 14", "22 aspen ct". */
bool place_told(const struct asked *asked);

/* A wish to die was told in the last hours, and staff have not closed it. */
bool self_harm_was_told(const struct context *context);
/* The same, and nothing of the body or from others with it. */
bool self_harm_stands(const struct asked *asked);
/* After that, this text tells of what it may be done with. */
bool self_harm_goes_on(const struct asked *asked);
/* "Me quiero matar" is no threat of another's. */
bool self_harm_is_own_wish(const struct asked *asked);
/* What is said to each text then, and whether a person is called again. */
const char *self_harm_words(const struct asked *asked);
void self_harm_alert(const struct asked *asked, struct verdict *verdict, bool is_courtesy);

/* Beside an emergency: answers what asks for power or backup, if that needs no question back. */
bool open_emergency_aid(const struct asked *question, struct verdict *verdict);
/* What a text says of the unit in words of the trade, whether or not a sign says it too. */
enum trouble {
    TROUBLE_NONE,
    TROUBLE_DANGER,  /* hot, hissing, swollen, wet */
    TROUBLE_STOPPED, /* no oxygen or no power */
    TROUBLE_OTHER
};
enum trouble equipment_trouble_told(const struct asked *asked);
/* What they run on is told to be empty, and there may be no other. */
enum ran_out { RAN_OUT_NOTHING, RAN_OUT_BATTERY, RAN_OUT_TANK };
enum ran_out ran_out_told(const struct asked *asked);
/* Their backup is told to be empty, or that there is none. */
bool ran_out_of_backup(const struct asked *asked);
/* It is, and there is nothing else, or they are where nothing can be had. */
bool ran_out_of_everything(const struct asked *asked);
/* "... and so did my dad": that somebody died is told with it. */
bool ran_out_with_somebody(const struct asked *asked);
/* And that is all the text tells. */
bool ran_out_is_all(const struct asked *asked);
/* This text of theirs tells of a hiss, and it is a cylinder that was opened; then what to look at.
 */
bool hissing_is_of_cylinder(const struct asked *whole, const char *text);
void hissing_answer(const struct asked *whole, struct verdict *verdict);
/* A battery is told of that is empty long before it should be: no hours are worked out of it. */
bool weak_battery_told(const struct asked *asked);
/* The same of another part of the text in which this question stands. */
bool weak_battery_in_message(const struct asked *asked);
/* Which rental is meant? The question is kept and answered once one is chosen. */
void open_question_which_rental(const struct asked *asked, struct verdict *verdict,
                                const char *topic);
/* Goes down the questions' steps from power arithmetic on; always settles. */
void handlers_answer(const struct asked *asked, struct verdict *verdict);
/* Keeps what was answered for a text that goes on with it. */
void follow_up_keep(const struct asked *whole, struct verdict *verdict);
/* If the whole text asks for arithmetic, the first answer holds what was read of it. */
void power_keep_reading(const struct asked *whole, struct verdict *verdict);
/* Answers with this topic's text, filled in, whatever the search says. */
void topics_answer(const struct asked *asked, struct verdict *verdict, const struct topic *topic);
/* Asks how long a charge that it tells lasts, which is surely none of the body. */
bool power_asks_how_long(const struct asked *asked);
/* If only the office can do what this topic is about, or a person is asked for: calls the office.
 */
void office_call(const struct asked *asked, struct verdict *verdict, const char *topic_id);
/* What the office must hear of in the text, as far as no list has its words; the content is asked
 * at most once about a piece. */
enum matter office_matter(const struct asked *asked);
/* The reason for a call that staff hear of although they heard it before: beside a graver alert
 * nobody is called about a known one, which may have been another wish or fault. */
const char *office_reason_anew(const struct asked *asked, const char *reason);
/* What this text asks of the office waits until it is open: it is closed, and nothing tells that
 * the renter needs it before. */
bool office_hours_wait(const struct asked *asked);
/* The mains failed and no battery runs what this renter needs: "Go to your backup now ...". NULL if
 * that is not so or not known, or for any other sign: then the sign's own words count. Of a unit
 * that runs on its battery: that its charge is asked for. */
char *outage_words(const struct asked *whole, const struct sign *sign);
/* The mains may be out, but the unit runs on its battery, and no doubt about it is told. */
bool flowing_tells_it_runs(const struct asked *asked);
/* "Is oxygen flowing again?" is open, and this is NO in any words: an emergency by itself. */
bool flowing_is_denied(const struct asked *whole);
/* If that is all that staff are called about and charges are told: keeps them, and adds how long
 * they last where there is room for it. */
void outage_say_hours(const struct asked *whole, struct verdict *verdict);
/* If that is all that staff are called about: where the mains failed, and until when the batteries
 * last. The latter also if a charge was told. */
void outage_mark(const struct asked *whole, struct verdict *verdict);
/* From when on staff are called about what was decided. */
int64_t office_hours_call(const struct asked *whole, const struct verdict *verdict);
/* Asks whether oxygen flows again, or still if the unit runs on its battery, and keeps that open.
 */
void flowing_ask(const struct asked *asked, struct verdict *verdict);
/* It does not, or the same trouble was told once more while we asked. */
void flowing_still_none(const struct asked *whole, struct verdict *verdict);
/* We wait for an answer to it, and this text does not begin with YES. */
bool flowing_may_be_none(const struct asked *whole);
/* That, and the verdict's signs tell anew that there may be none: not that the power is out, of a
 * unit that runs on its battery, or to a person who leads the conversation. */
bool flowing_is_told_again(const struct asked *whole, const struct verdict *verdict);
/* How grave it is when nobody answers. */
enum alert_level flowing_unanswered_level(const struct conversation *conversation);
/* If it is still open after this text: asks once more, behind the answers. */
void flowing_ask_again(const struct asked *whole, struct verdict *verdict);
/* "Is there a plug where you are?"; false if it cannot be asked (open_question_ask()). */
bool plug_ask(const struct asked *asked, struct verdict *verdict);
/* The same once more beside another answer, while it is open: it stays due when it was. */
void plug_ask_again(const struct asked *asked, struct verdict *verdict);
/* An answer to it. */
bool plug_answered(const struct asked *asked, struct verdict *verdict);
/* Enough time is left after all, or it was answered. */
void plug_settled(struct verdict *verdict);
/* This verdict says already that there is none. */
bool plug_is_missing(const struct verdict *verdict);
void open_question_close(struct verdict *verdict);
/* What was asked back of a power station is told. */
bool other_power_goes_on(const struct asked *before, const struct asked *asked,
                         struct verdict *verdict);
/* The time that was asked back for a reminder. */
bool reminder_goes_on(const struct asked *before, const struct asked *asked,
                      struct verdict *verdict);
/* What a sum lacked (a charge, a time, a length), or a reminder, is told: it is worked out now. */
bool sum_goes_on(const struct asked *asked, struct verdict *verdict);
/*
 * Keeps the question open in the verdict's conversation. False, nothing changed, if it cannot be
 * open: a graver one waits there for its answer, or the number opted out and is not asked.
 */
bool open_question_ask(const struct asked *asked, struct verdict *verdict,
                       enum open_question question);

#endif
