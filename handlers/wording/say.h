/*
 * Every sentence that the program says by itself, in each language, in a table (say.c; for what is
 * worked out beside battery time, say_sums.c); all others are the office's content. {0} to {3} are
 * arguments; other braces are placeholders of the house (company, phone, hours, emergency).
 */
#ifndef SAY_H
#define SAY_H

#include "context.h"

enum phrase {
    SAY_AUTOMATIC,     /* first reply of a conversation */
    SAY_YOU_WROTE_AT,  /* 0 clock time */
    SAY_CALL_911_IF,   /* ends a clinical reply */
    SAY_BREATHING_911, /* the same in short */
    SAY_STAFF_ALERTED,
    SAY_EMERGENCY_FIRST, /* first part when the kb has no sign for a reading */
    SAY_BATTERY_AND_SYMPTOM,
    SAY_CLINICAL_READING, /* the same, not an emergency */
    SAY_ADDRESS,          /* 0 the 911 address on record */
    SAY_TELL_TOO,         /* 0 signs in brief */
    SAY_SIT_UP,
    SAY_PLUG_IN,
    SAY_BACKUP, /* 0 "your E cylinder" */
    SAY_BACKUP_IF_ANY,
    SAY_DO_NOT_WAIT, /* "Staff were alerted too. Don't wait for them." */
    SAY_FLOWING,     /* "Is oxygen flowing again? YES or NO" */
    SAY_FLOWING_STILL,
    SAY_FLOWING_YES,
    SAY_FLOWING_NO,
    SAY_CALLED_911, /* first of what is said while an emergency is open */
    SAY_CANNOT_CALL,
    SAY_STAFF_CALL_FOR_YOU,
    SAY_IN_SPANISH,
    SAY_STAFF_HELP,
    SAY_STAFF_NONE_OPEN,
    SAY_STAFF_TAKEN,    /* 0 number, 1 whose, with a colon, or nothing */
    SAY_STAFF_HAS_IT,   /* 0 number, 1 who */
    SAY_STAFF_CLOSED,   /* the same */
    SAY_STAFF_OUTCOME,  /* 0 number */
    SAY_TALK_SENT,      /* 0 number, 1 " to Gwen" or nothing */
    SAY_TALK_ASKED,     /* 0 number, 1 "Gwen: w" or "W" */
    SAY_TALK_RING,      /* 0 number, 1 phone */
    SAY_TALK_NOBODY,    /* 0 number */
    SAY_TALK_CLOSED,    /* to the renter: the person who wrote has closed it */
    SAY_TALK_NO_WORD,   /* to the renter: nobody has answered in time */
    SAY_NOBODY_YET,     /* to the renter: everyone was called, and nobody has taken the alert */
    SAY_SOMEONE_HAS_IT, /* to the renter, after that: 0 who has taken it */
    SAY_HAND_WHO,       /* 0 number, 1 names */
    SAY_HAND_ASKED,     /* 0 number, 1 name, 2 whose, in brackets, or nothing */
    SAY_DIED_WHO,
    SAY_DIED,  /* 0 rental id, 1 first name */
    SAY_ALIVE, /* the same */
    SAY_TURN_YOURS,
    SAY_TURN_ANOTHERS, /* 0 who has it */
    SAY_TURN_NONE,
    SAY_STAFF_NOBODY, /* 0 number, 1 who */
    SAY_STAFF_TAKE,   /* 0 number, 1 whose */
    SAY_STAFF_SLIP,   /* 0 the word that may be meant, 1 number */
    SAY_STAFF_STAYS,  /* 0 number */
    SAY_STAFF_ABSENT,
    SAY_STAFF_RECORD, /* where the rest of an alert's record is told, for texts can be read */
    SAY_LINK_HELP,
    SAY_LINK_NO_RENTAL, /* 0 what was taken for an id */
    SAY_LINK_IN_RECORD, /* 0 phone, 1 rental id */
    SAY_LINK_CLOSED,    /* 0 rental id */
    SAY_LINKED,         /* 0 phone, 1 rental id, 2 first name */
    SAY_UNLINKED,       /* the same */
    SAY_OPTED_OUT,
    SAY_HOW_TO_STOP,
    SAY_OPTED_IN,
    SAY_HELP,
    SAY_IN_DANGER,
    SAY_WHICH_RENTAL,  /* 0 "1 Ana (Wren), 2 Tom (Brook)" */
    SAY_WHICH_TOPIC,   /* 0, 1 titles */
    SAY_WHICH_CHARGE,  /* 0 how to read the gauge, or "" */
    SAY_WHICH_PERCENT, /* 0 what was told */
    SAY_IMPOSSIBLE,    /* 0 the words */
    SAY_TELL_AGAIN,    /* behind it */
    SAY_READ,          /* 0 what was read */
    SAY_DROPPED,       /* the question that was open is let go */
    SAY_DID_SO,        /* they did what we wrote */
    SAY_OK_IF_SO,      /* 0 phone: is that ok? */
    SAY_PLAN_ON,       /* 0 duration, 1 clock time, 2 clock time */
    SAY_PLAN_ON_SHORT, /* 0 duration, 1 clock time: no reserve left */
    SAY_PLAN_ON_NOTHING,
    SAY_UP_TO,         /* 0 duration */
    SAY_COUNTED_ORDER, /* 0 "continuous 2", 1 "at rest" */
    SAY_COUNTED_TOLD,  /* 0 "pulse 3" */
    SAY_SINCE,         /* 0 clock time of the remembered charge */
    SAY_SLEEP_UNIT_ONLY,
    SAY_ONE_BATTERY,       /* 0 duration */
    SAY_THAT_BATTERY,      /* 0 duration */
    SAY_SO_MANY_BATTERIES, /* 0 how many, 1 duration */
    SAY_RECORD_SAYS,       /* 0 "continuous 2", 1 "at rest" */
    SAY_STAFF_WILL_CALL,
    SAY_NO_SLEEP_ORDER,
    SAY_NO_FIGURE,
    SAY_WALL_ONLY, /* 0 "continuous 3" */
    SAY_WALL_NOW,
    SAY_OUT_LASTS,       /* 0 duration, 1 clock time: the mains failed */
    SAY_OUT_TO_BACKUP,   /* 0 "your E cylinder", 1 "continuous 3": the mains failed */
    SAY_OUT_NO_BACKUP,   /* 0 "continuous 3": the same, none on record */
    SAY_TRIP_LASTS,      /* 0 length, 1 what is left at the end */
    SAY_TRIP_LASTS_MID,  /* 0 length, 1 what is left at the tightest, before the end */
    SAY_TRIP_TIGHT,      /* 0 length, 1 what is left: less than the reserve */
    SAY_TRIP_TIGHT_MID,  /* the same, before the end */
    SAY_TRIP_TIGHT_BARE, /* 0 length: nothing is left */
    SAY_TRIP_SHORT,      /* 0 after how long, 1 on which leg, 2 how much is lacking */
    SAY_TRIP_AT,         /* 0 clock time */
    SAY_TRIP_KEEP,       /* 0 how much to keep in hand */
    SAY_TRIP_LEFT_WITH,  /* 0 "continuous 2", 1 "at rest" */
    SAY_TRIP_MEND_CAR,
    SAY_TRIP_MEND_WALL,
    SAY_TRIP_MEND_ONE,
    SAY_TRIP_MEND_TWO,
    SAY_TRIP_MEND_NONE,
    SAY_TRIP_CALL,
    SAY_TRIP_HEIGHT, /* 0 feet */
    SAY_TRIP_NO_CORD,
    SAY_COLD,      /* 0 percent */
    SAY_TRIP_FULL, /* 0 how many */
    SAY_TRIP_ASK_LENGTH,
    SAY_REMIND_WATCH, /* 0 clock time, 1 duration */
    SAY_REMIND_AT,    /* 0 day and time */
    SAY_REMIND_TODAY, /* 0 clock time: they say tomorrow, before they have slept */
    SAY_NOT_AN_ALARM,
    SAY_REMIND_OFFER,
    SAY_REMIND_WATCH_OFF, /* 0 clock time */
    SAY_REMIND_ALL_OFF,
    SAY_REMIND_NONE,
    SAY_REMIND_WHEN, /* asks for the time */
    SAY_REMIND_PAST, /* 0 clock time */
    SAY_REMIND_MANY,
    SAY_REMIND_DUE_OUT,    /* 0 clock time of the end, 1 of the charge */
    SAY_REMIND_DUE_AT,     /* 0 what they wrote */
    SAY_REMIND_DUE_AT_NOW, /* 0 clock time */
    SAY_REMIND_LATE,       /* 0 clock time, 1 clock time now */
    SAY_REMIND_LATE_OUT,
    SAY_REMIND_OFF_CHARGE, /* 0 clock time */
    SAY_REMIND_OFF_RECORD, /* 0 clock time */
    SAY_PLUG,              /* "Is there a plug where you are? Text YES or NO." */
    SAY_IN_CAR,
    SAY_NO_PLUG,
    SAY_NO_RENTAL,
    SAY_TROUBLE_STOPPED, /* 0 SAY_BACKUP or SAY_BACKUP_IF_ANY */
    SAY_TROUBLE_DANGER,
    SAY_TROUBLE_OTHER,
    SAY_CYLINDER_HISSES,
    SAY_OUT_RUNS, /* the mains failed, and the unit runs on its battery */
    SAY_WEAK_BATTERY,
    SAY_DISPLAY,        /* 0 words shown, 1 what they mean */
    SAY_DISPLAY_URGENT, /* the same, and staff are called */
    SAY_IN_ENGLISH,     /* 0 what stands in no other language */
    SAY_EMERGENCY_NUMBER,
    SAY_IS_OVER,
    SAY_OVER_CALLED,
    SAY_DANGER_YES,
    SAY_OFFICE_TOLD,
    SAY_OFFICE_WAITS, /* until it is open; no time is promised */
    SAY_OFFICE_CALL,
    SAY_GAP_RENTER,
    SAY_GAP_WAITS,
    SAY_GAP_STRANGER,
    SAY_REST_TO_PERSON, /* more questions in one text than replies go out */
    SAY_PICTURE,
    SAY_OTHER_LANGUAGE, /* one text in both languages */
    SAY_HELLO,
    SAY_NOTICE,             /* 0 what the office writes to many */
    SAY_TOO_MANY,           /* texts of one phone */
    SAY_TOO_MANY_ALL,       /* texts of everybody */
    SAY_SUMS,               /* from here on in say_sums.c */
    SAY_FULL_IN = SAY_SUMS, /* 0 duration, 1 clock time */
    SAY_PLAN_UNTIL,         /* 0 duration, 1 clock time */
    SAY_BROKEN_PLUG,
    SAY_ALL_FULL_IN,  /* the same */
    SAY_TO_80_IN,     /* 0 duration */
    SAY_CHANGES_AT,   /* 0 clock times */
    SAY_OFF_IN,       /* 0 duration */
    SAY_ALL_APART_IN, /* 0 duration */
    SAY_APART_IN,     /* the same */
    SAY_CHARGED_WALL, /* 0 one of the three next */
    SAY_CHARGED_CAR,  /* the same, 1 amperes of the fuse */
    SAY_PLACE_RUNNING,
    SAY_PLACE_OFF,
    SAY_PLACE_APART,
    SAY_AND,          /* 0, 1 places */
    SAY_TIMETABLE,    /* 0 what is put where when */
    SAY_PUT_NOW,      /* 0 "20%" */
    SAY_PUT_AT,       /* 0 clock time, 1 "20%" */
    SAY_IN_UNIT,      /* behind it */
    SAY_IN_CHARGER,   /* the same */
    SAY_LEVELS_AT,    /* 0 clock time, 1 "100%, 60%" */
    SAY_LEVELS_AFTER, /* 0 duration, 1 "100%, 60%" */
    SAY_ALL_FULL_AT,  /* 0 clock time */
    SAY_NOBODY_GETS_UP,
    SAY_SOMEBODY_GETS_UP, /* 0 clock times */
    SAY_NOT_ALL_BY_THEN,
    SAY_ALL_ARE_FULL,
    SAY_ASK_TONIGHT,
    SAY_TOO_COLD, /* 0 degrees C, 1 degrees F */
    SAY_TOO_HOT,  /* the same */
    SAY_CAR_ONLY_OFF,
    SAY_WHICH_HALF_OF_DAY,
    SAY_BY_WHEN,          /* 0 what was read */
    SAY_THAT_IS_PAST,     /* 0 clock time */
    SAY_MORE_THAN_RECORD, /* 0 how many were read, 1 how many the record has */
    SAY_NO_CHARGE_FIGURE,
    SAY_ASK_GATE_TO_GATE,
    SAY_AIR_IS_LEAST,    /* before it */
    SAY_IS_IT_GATE,      /* 0 "flight 4 h 30 min" */
    SAY_FLIGHT_NEEDS,    /* 0 gate to gate, 1 battery time, 2 how many, 3 "pulse 2" */
    SAY_FLIGHT_NO_ORDER, /* 0 gate to gate, 1 battery time */
    SAY_WITH_GROUND,     /* 0 duration */
    SAY_GROUND_ON_TOP,
    SAY_HAS_ENOUGH,     /* 0 how many they have */
    SAY_HAS_TOO_FEW,    /* the same, 1 how many more */
    SAY_NEEDS_APPROVAL, /* 0 how many may go in all */
    SAY_CANT_BE_DONE,
    SAY_NOT_ON_PLANE,
    SAY_NO_LABEL,
    SAY_IN_CABIN,
    SAY_WATT_HOURS,      /* 0 "Finch 95 Wh" */
    SAY_WATT_HOURS_FREE, /* each is 100 Wh or less */
    SAY_FLIGHT_UNKNOWN,  /* 0 told, 1 what that needs: of no unit that we know */
    SAY_CALL_AIRLINE,
    SAY_FLIGHT_NO_FIGURE,
    SAY_ASK_CYLINDER, /* 0 what is missing */
    SAY_CYLINDER_SIZE,
    SAY_CYLINDER_GAUGE,
    SAY_CYLINDER_FLOW,
    SAY_CYLINDER_LASTS, /* 0 duration, 1 clock time */
    SAY_CYLINDER_EMPTY,
    SAY_CYLINDER_LOW,       /* behind one of those two: it ends soon */
    SAY_CYLINDER_OF_RECORD, /* 0 "E, 2 L/min" */
    SAY_CYLINDER_RESIDUAL,
    SAY_CYLINDER_FLOW_DIFFERS, /* 0 litres a minute */
    SAY_CYLINDER_PERSON,
    SAY_SOURCE_TAKES,  /* 0 "pulse 2", 1 watts taken, 2 watts of a source */
    SAY_SOURCE_ENOUGH, /* 0 watts there are */
    SAY_SOURCE_SMALL,  /* the same */
    SAY_SOURCE_SINE,   /* 0 amperes of the fuse */
    SAY_SOURCE_GENERATOR,
    SAY_SOURCE_RV,
    SAY_SOURCE_SEAT,
    SAY_SOURCE_LASTS,    /* 0 duration, 1 watt-hours */
    SAY_SOURCE_LASTS_IF, /* the same */
    SAY_SOURCE_USB_ONLY,
    SAY_SOURCE_ON_BOARD,
    SAY_SOURCE_NOT_ON_BOARD,
    SAY_SOURCE_ASK_WH,
    SAY_SOURCE_ASK_US,
    SAY_SOURCE_NO_FIGURE,
    SAY_REQUEST_BATTERIES,    /* 0 how many */
    SAY_REQUEST_BATTERIES_BY, /* 0 how many, 1 day */
    SAY_REQUEST_BY,           /* 0 day */
    SAY_REQUEST_DAYS,         /* 0 how many, 1 day */
    SAY_REQUEST_UNTIL,        /* 0 day */
    SAY_OFFICE_HOURS,
    SAY_RAN_OUT_BATTERY, /* 0 SAY_BACKUP or SAY_BACKUP_IF_ANY */
    SAY_KEEP_ON,         /* while an ambulance comes */
    SAY_NOBODY_GETS_THROUGH,
    SAY_HELP_IS_LATE,
    SAY_CRY, /* behind SAY_STAFF_ALERTED */
    SAY_HOSPICE,
    SAY_HOSPICE_NOW,
    SAY_HELP_COMES,      /* they have called */
    SAY_COURTESY,        /* what is surely no question, in words that are not listed */
    SAY_IF_IT_IS_HELP,   /* somebody came */
    SAY_CALL_ANYWAY,     /* somebody refuses it */
    SAY_LET_THEM_COME,   /* who asks whether the ambulance is still needed */
    SAY_IT_IS_A_PROGRAM, /* who asks whether we called */
    SAY_IT_CANNOT_CALL,  /* the same, behind SAY_AUTOMATIC */
    SAY_WHERE_UNKNOWN,
    SAY_PLACE_TOLD,
    SAY_ASK_911,     /* what to do until help is there */
    SAY_NOT_BACK_IN, /* before that, after a fire */
    SAY_TELL_911_THIS,
    SAY_988_AGAIN,
    SAY_RAN_OUT_TANK,
    SAY_WHAT_TO_KNOW,
    SAY_IF_A_READING, /* 0 "84" */
    SAY_HOUSE_ALARM,
    PHRASE_COUNT
};

/*
 * The sentence in `arena`; the arguments are strings, as many as the phrase has, ended by NULL.
 * Arguments are put in as they are: braces in them mean nothing.
 */
char *say(void *arena, const struct house *house, enum language language, enum phrase phrase, ...)
    __attribute__((sentinel));

/* "2 h 15 min", "45 min", "3 h" */
char *say_minutes(void *arena, int minutes);
/* "1:30 pm" on the wall at that moment */
char *say_clock(void *arena, const struct zone *zone, int64_t utc_s);
/* "Saturday, Feb 14" */
char *say_date(void *arena, const struct zone *zone, enum language language, int64_t utc_s);
/* "Saturday, Feb 14, 10 am" */
char *say_day(void *arena, const struct zone *zone, enum language language, int64_t utc_s);
/* "2" or "2.5" */
char *say_tenths(void *arena, int tenths);
/* "continuous 2" */
char *say_mode(void *arena, enum language language, enum mode mode, int setting_tenths);
/* "at rest", "for walking", "for sleep", "for flying" */
const char *say_for(enum language language, enum activity activity);
/* "If it stopped, use your E cylinder at the flow on its tag.": the backup as the record has it;
 * without a record or a backup in it "... if you have one". */
char *say_use_backup(void *arena, const struct house *house, enum language language,
                     const struct rental *rental);
/* "drive", "stay" */
const char *say_leg(enum language language, enum leg_kind kind);
/* "100%, 40%, pulse 2, 45 min ago": what a text told, in short; "" if it told nothing. */
char *say_read(void *arena, enum language language, const struct told *told);
/* "your E cylinder"; NULL if the record has no backup */
char *say_backup(void *arena, enum language language, const struct rental *rental);

#endif
