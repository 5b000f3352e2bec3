#include "audit_rows.h"

#include "store_sql.h"

int
audit_rows_add(struct store *store, const struct audit_row *row, int64_t now_utc_s,
               struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO audit (at_utc_s, who, what, subject, detail)"
                    " VALUES (?, ?, ?, ?, ?)",
                    VALUES(number(now_utc_s), words(row->who), words(row->what),
                           words(row->subject), words(row->detail)),
                    fault);
}
