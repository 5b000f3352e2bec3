/* Which rentals a phone is of, as SQL; for the files of store/ only. */
#ifndef RENTAL_SQL_H
#define RENTAL_SQL_H

/* Ids of the rentals whose current record names the phone, or which staff linked it to. */
#define RENTAL_IDS_OF_PHONE(phone)                                                                 \
    "SELECT rr.rental_id FROM rental_phone rp JOIN rental_row rr ON rr.id = rp.rental_row_id"      \
    " WHERE rp.phone = " phone                                                                     \
    " AND rr.id = (SELECT max(id) FROM rental_row WHERE rental_id = rr.rental_id)"                 \
    " UNION SELECT pl.rental_id FROM phone_link pl WHERE pl.phone = " phone " AND pl.linked = 1"   \
    " AND pl.id = (SELECT max(id) FROM phone_link WHERE phone = pl.phone"                          \
    " AND rental_id = pl.rental_id)"

#endif
