/*
 * A notice: one text that the office sends to the renters it concerns, whatever they asked: a
 * battery called back, the mains off, a road closed. First a plan, which can be looked at and
 * changes nothing; then its rows, in the transaction that is open, which the daemon sends.
 *
 * Nobody is texted who wants no texts, on a landline, about whom a death was told, whose phone
 * somebody else may read, or who had their share of notices today; they are on the list of whom to
 * ring. Quiet hours hold, unless it is urgent; a text that would fall into them after all is
 * dropped and that person listed as well.
 */
#ifndef NOTICE_H
#define NOTICE_H

#include "config.h"
#include "notice_rows.h"
#include "rental.h"

/* Which rentals; what is NULL or 0 picks all. Patterns may hold * and ?. */
struct notice_pick {
    const char *unit;   /* pattern of the unit's id */
    const char *serial; /* pattern of the unit's or of a battery's serial */
    const char *place;  /* words that stand in the place, in any case */
    unsigned states;    /* set of 1 << enum rental_state; 0: out and overdue */
};

/* One phone of a rental, or a rental without any. */
struct notice_target {
    const struct rental *rental;
    const struct phone *phone; /* NULL: there is none */
    const char *hindrance;     /* why it is not texted; NULL: it is */
    enum language language;
    int64_t send_utc_s, give_up_utc_s;
};

struct notice {
    const char *english, *spanish;     /* as the office wrote them; spanish may be NULL */
    const char *texts[LANGUAGE_COUNT]; /* as they are sent, NULL of spanish without it */
    bool is_urgent;
    struct notice_target *targets; /* by rental_id */
    size_t count, texted;
    size_t texted_in[LANGUAGE_COUNT];
};

/*
 * Plans it as of now, in `arena`; notice->english, spanish and is_urgent are given. Records that
 * cannot be read are counted in *unread.
 */
int notice_plan(struct store *store, void *arena, const struct config *config,
                const struct notice_pick *pick, int64_t now_utc_s, struct notice *notice,
                size_t *unread, struct fault *fault);

/* "unit brook, place West Fork, out or overdue", in `arena`. */
char *notice_pick_words(void *arena, const struct notice_pick *pick);

/* Writes what was planned; `who` is a staff phone, `arena` for what is needed meanwhile. */
int notice_write(struct store *store, void *arena, const struct config *config,
                 const struct notice *notice, const char *who, const char *picked,
                 int64_t now_utc_s, int64_t *number, struct fault *fault);

/* A text of a notice did not get through: the office hears once that there is somebody to ring. */
int notice_not_reached(struct store *store, const struct config *config, int64_t number,
                       bool is_urgent, int64_t now_utc_s, struct fault *fault);

#endif
