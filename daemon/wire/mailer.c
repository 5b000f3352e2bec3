#include "mailer.h"

#include <stdatomic.h>
#include <stdbool.h>
#include <string.h>
#include <time.h>

#include <curl/curl.h>
#include <event2/util.h>

#include "memory.h"
#include "worker.h"

/* For calls that fail only when memory is out. */
#define must(call) end_unless((call) == 0)

enum { DATE_SIZE = 32, ANSWER_WAIT_MIN_S = 1 };

static void
end_unless(bool is_ok)
{
    if (!is_ok) {
        memory_must(NULL);
    }
}

struct mailer {
    struct worker *worker;
    atomic_bool is_ending; /* read in the thread */
};

struct mail_job {
    struct worker_job job; /* first: the worker's pointer is ours */
    struct mailer *mailer;
    struct mail_message message; /* strings are copies */
    mail_done *done;
    void *cookie;
    int status;
    char error[CURL_ERROR_SIZE];
};

/* ---- In the thread -------------------------------------------------------------------------- */

static int
on_progress(void *data, curl_off_t a, curl_off_t b, curl_off_t c, curl_off_t d)
{
    struct mailer *mailer = data;

    (void)a;
    (void)b;
    (void)c;
    (void)d;
    return atomic_load(&mailer->is_ending) ? 1 : 0;
}

static void
add_header(struct curl_slist **list, const char *name, const char *before, const char *value,
           const char *after)
{
    char *line = memory_format(NULL, "%s: %s%s%s", name, before, value, after);

    *list = memory_must(curl_slist_append(*list, line));
    talloc_free(line);
}

static struct curl_slist *
headers_of(const struct mail_message *message)
{
    struct curl_slist *list = NULL;
    char *id = memory_format(NULL, "%s%s", message->id, strchr(message->from, '@'));

    add_header(&list, "Date", "", message->date, "");
    add_header(&list, "From", "<", message->from, ">");
    add_header(&list, "To", "<", message->to, ">");
    add_header(&list, "Subject", "", message->subject, "");
    add_header(&list, "Message-ID", "<", id, ">");
    /* RFC 3834: no holiday notices in return, please. */
    add_header(&list, "Auto-Submitted", "", "auto-generated", "");
    talloc_free(id);
    return list;
}

static void
set_rules(CURL *easy, struct mail_job *job)
{
    const struct mail_message *message = &job->message;
    long answer_wait_s = message->timeout_ms / 1000;

    must(curl_easy_setopt(easy, CURLOPT_URL, message->url));
    must(curl_easy_setopt(easy, CURLOPT_PROTOCOLS_STR, "smtp,smtps"));
    must(curl_easy_setopt(easy, CURLOPT_USE_SSL, (long)CURLUSESSL_ALL));
    must(curl_easy_setopt(easy, CURLOPT_NOSIGNAL, 1L));
    must(curl_easy_setopt(easy, CURLOPT_QUICK_EXIT, 1L)); /* no wait for a look-up that hangs */
    must(curl_easy_setopt(easy, CURLOPT_PROXY, ""));
    must(curl_easy_setopt(easy, CURLOPT_FORBID_REUSE, 1L));
    must(curl_easy_setopt(easy, CURLOPT_TIMEOUT_MS, message->timeout_ms));
    /* The wait for the answer to QUIT obeys only this. */
    must(curl_easy_setopt(easy, CURLOPT_SERVER_RESPONSE_TIMEOUT,
                          answer_wait_s > ANSWER_WAIT_MIN_S ? answer_wait_s
                                                            : (long)ANSWER_WAIT_MIN_S));
    must(curl_easy_setopt(easy, CURLOPT_ERRORBUFFER, job->error));
    must(curl_easy_setopt(easy, CURLOPT_NOPROGRESS, 0L));
    must(curl_easy_setopt(easy, CURLOPT_XFERINFOFUNCTION, on_progress));
    must(curl_easy_setopt(easy, CURLOPT_XFERINFODATA, job->mailer));
    if (message->ca_file != NULL) {
        must(curl_easy_setopt(easy, CURLOPT_CAINFO, message->ca_file));
        must(curl_easy_setopt(easy, CURLOPT_CAPATH, NULL));
    }
    if (message->user != NULL) {
        must(curl_easy_setopt(easy, CURLOPT_USERNAME, message->user));
        must(curl_easy_setopt(easy, CURLOPT_PASSWORD, message->password));
    }
}

static void
on_work(struct worker_job *worker_job)
{
    struct mail_job *job = (struct mail_job *)worker_job;
    const struct mail_message *message = &job->message;
    CURL *easy = memory_must(curl_easy_init());
    struct curl_slist *headers = headers_of(message);
    struct curl_slist *recipients = memory_must(curl_slist_append(NULL, message->to));
    curl_mime *mime = memory_must(curl_mime_init(easy));
    curl_mimepart *part = memory_must(curl_mime_addpart(mime));
    long status = 0;
    CURLcode code;

    set_rules(easy, job);
    must(curl_easy_setopt(easy, CURLOPT_HTTPHEADER, headers));
    must(curl_easy_setopt(easy, CURLOPT_MAIL_FROM, message->from));
    must(curl_easy_setopt(easy, CURLOPT_MAIL_RCPT, recipients));
    must(curl_mime_data(part, message->text, CURL_ZERO_TERMINATED));
    must(curl_mime_type(part, "text/plain; charset=utf-8"));
    must(curl_mime_encoder(part, "quoted-printable"));
    must(curl_easy_setopt(easy, CURLOPT_MIMEPOST, mime));
    code = curl_easy_perform(easy);
    must(curl_easy_getinfo(easy, CURLINFO_RESPONSE_CODE, &status));
    if (code == CURLE_OK) {
        job->status = 250;
        job->error[0] = '\0';
    } else {
        /* A good answer before the failure says nothing of the message. */
        job->status = status >= 400 ? (int)status : 0;
        if (job->error[0] == '\0') {
            (void)strncpy(job->error, curl_easy_strerror(code), sizeof(job->error) - 1);
        }
    }
    curl_mime_free(mime);
    curl_slist_free_all(recipients);
    curl_slist_free_all(headers);
    curl_easy_cleanup(easy);
}

/* ---- On the loop ---------------------------------------------------------------------------- */

static void
on_done(struct worker_job *worker_job)
{
    struct mail_job *job = (struct mail_job *)worker_job;
    const struct mail_result result = {.status = job->status, .error = job->error};

    if (!atomic_load(&job->mailer->is_ending)) {
        job->done(&result, job->cookie);
    }
    talloc_free(job);
}

struct mailer *
mailer_new(struct event_base *base)
{
    struct mailer *mailer = memory_new(NULL, struct mailer);

    mailer->worker = worker_new(base);
    return mailer;
}

void
mailer_free(struct mailer *mailer)
{
    if (mailer == NULL) {
        return;
    }
    atomic_store(&mailer->is_ending, true);
    worker_free(mailer->worker);
    talloc_free(mailer);
}

static const char *
copy_or_null(void *arena, const char *text)
{
    return text != NULL ? memory_copy(arena, text) : NULL;
}

void
mailer_send(struct mailer *mailer, const struct mail_message *message, mail_done *done,
            void *cookie)
{
    struct mail_job *job = memory_new(NULL, struct mail_job);

    job->job = (struct worker_job){.work = on_work, .done = on_done};
    job->mailer = mailer;
    job->message = (struct mail_message){.url = memory_copy(job, message->url),
                                         .user = copy_or_null(job, message->user),
                                         .password = copy_or_null(job, message->password),
                                         .ca_file = copy_or_null(job, message->ca_file),
                                         .from = memory_copy(job, message->from),
                                         .to = memory_copy(job, message->to),
                                         .subject = memory_copy(job, message->subject),
                                         .id = memory_copy(job, message->id),
                                         .date = memory_copy(job, message->date),
                                         .text = memory_copy(job, message->text),
                                         .timeout_ms = message->timeout_ms};
    job->done = done;
    job->cookie = cookie;
    worker_add(mailer->worker, &job->job);
}

char *
mail_date(void *arena, long long utc_s)
{
    static const char zone[] = "GMT"; /* how libevent ends it, obsolete in e-mail */
    time_t seconds = (time_t)utc_s;
    char text[DATE_SIZE];
    struct tm parts;
    int length;

    gmtime_r(&seconds, &parts);
    length = evutil_date_rfc1123(text, sizeof(text), &parts);
    return memory_format(arena, "%.*s+0000", length - (int)strlen(zone), text);
}
