/*
 * How well the model finds labels on two open data sets. Prints one table; the reference rows were
 * measured on the same files.
 *
 *     match DATA [VECTORS]    DATA holds clinc150/ and banking77/
 *
 * CLINC150 (CC BY 3.0): Larson et al., "An Evaluation Dataset for Intent Classification and
 * Out-of-Scope Prediction", EMNLP-IJCNLP 2019. BANKING77 (CC BY 4.0): Casanueva et al., "Efficient
 * Intent Detection with Dual Sentence Encoders", NLP for ConvAI 2020. A line is label, tab, text.
 *
 * Nothing is chosen here: the model's constants come from train and val files (see model.h). The
 * list of ordinary words is the kb's; VECTORS are made by kb/reader/cut-vectors, and if there are
 * none, but kb/words/en.vectors is there, that is taken.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "area.h"
#include "memory.h"
#include "model.h"
#include "ordinary.h"
#include "vectors_file.h"

/* ---- Data ----------------------------------------------------------------------------------- */

/* Phrases of one or more files, with one numbering of labels. */
struct set {
    struct model_phrase *phrases;
    size_t count;
    const char **labels;
    size_t label_count;
};

static void
die(const char *what)
{
    perror(what);
    exit(1);
}

static int
label_of(void *arena, struct set *set, const char *name)
{
    size_t i;

    if (strcmp(name, "oos") == 0) {
        return MODEL_ELSEWHERE;
    }
    for (i = 0; i < set->label_count; i++) {
        if (strcmp(set->labels[i], name) == 0) {
            return (int)i;
        }
    }
    set->labels = memory_grow(arena, const char *, set->labels, set->label_count);
    set->labels[set->label_count] = memory_copy(arena, name);
    return (int)set->label_count++;
}

/* Adds a file's lines to the set; texts with labels that the set's first file lacks count too. */
static void
add_file(void *arena, struct set *set, const char *folder, const char *name)
{
    char *path = memory_format(arena, "%s/%s", folder, name), *line = NULL;
    FILE *file = fopen(path, "r");
    size_t room = 0;

    if (file == NULL) {
        die(path);
    }
    while (getline(&line, &room, file) > 0) {
        char *tab = strchr(line, '\t');

        if (tab == NULL) {
            continue;
        }
        *tab = '\0';
        tab[1 + strcspn(tab + 1, "\n")] = '\0';
        set->phrases = memory_grow(arena, struct model_phrase, set->phrases, set->count);
        set->phrases[set->count++] = (struct model_phrase){.text = memory_copy(arena, tab + 1),
                                                           .label = label_of(arena, set, line)};
    }
    free(line);
    fclose(file);
}

static const struct ordinary *
read_ordinary(void *arena, const char *path)
{
    struct ordinary *ordinary;
    FILE *file = fopen(path, "r");
    char *bytes = NULL;
    size_t room = 0;
    ssize_t length = file == NULL ? -1 : getdelim(&bytes, &room, '\0', file);

    if (length < 0) {
        die(path);
    }
    fclose(file);
    ordinary = ordinary_read(arena, bytes, (size_t)length);
    free(bytes);
    return ordinary;
}

/* What the model gets of the language besides the texts. */
struct language_words {
    const struct ordinary *ordinary;
    const struct vectors *vectors; /* or NULL */
};

/* ---- Accuracy ------------------------------------------------------------------------------- */

static struct scores
search_all(void *arena, const struct model *model, struct workspace *workspace,
           const struct set *set, size_t from)
{
    struct scores scores = {memory_array(arena, int, set->count + 1), 0, 0};
    size_t i;

    for (i = from; i < set->count; i++) {
        struct model_result result = model_search(model, arena, workspace, set->phrases[i].text);

        scores.list[scores.count++] = result.count > 0 ? result.best[0].score : 0;
        scores.right += result.count > 0 && result.best[0].label == set->phrases[i].label;
    }
    return scores;
}

struct figures {
    double right, right_typos, area;
};

/* One cell of the table: learns from one file, is tried on the test files. */
static struct figures
measure(const char *folder, const char *train, bool outside, const struct language_words *known)
{
    void *arena = memory_must(talloc_new(NULL));
    struct workspace *workspace = workspace_new();
    struct set set = {NULL, 0, NULL, 0};
    struct figures figures = {0, 0, 0};
    struct scores test, typos, oos;
    struct model *model;
    size_t from;

    add_file(arena, &set, folder, train);
    if (outside) {
        add_file(arena, &set, folder, "oos_train.tsv");
    }
    model = model_build(arena, workspace,
                        &(struct model_content){.language = LANGUAGE_EN,
                                                .phrases = set.phrases,
                                                .phrase_count = set.count,
                                                .label_count = (int)set.label_count,
                                                .ordinary = known->ordinary,
                                                .vectors = known->vectors});
    from = set.count;
    add_file(arena, &set, folder, "test.tsv");
    test = search_all(arena, model, workspace, &set, from);
    from = set.count;
    add_file(arena, &set, folder, "test_typos.tsv");
    typos = search_all(arena, model, workspace, &set, from);
    figures.right = 100.0 * (double)test.right / (double)test.count;
    figures.right_typos = 100.0 * (double)typos.right / (double)typos.count;
    if (outside) {
        from = set.count;
        add_file(arena, &set, folder, "oos_test.tsv");
        oos = search_all(arena, model, workspace, &set, from);
        figures.area = area(&test, &oos);
    }
    workspace_free(workspace);
    talloc_free(arena);
    return figures;
}

/* Measured on the same files with general methods; - where it was not. */
static const char *const references[][6] = {
    {"words 1-2, linear SVM", "91.6 / 84.4 / 78.7", "65.2 / 58.9 / 53.7", "-", "89.7 / 75.9 / 66.8",
     "58.9 / 48.4 / 41.4"},
    {"words + letters, linear SVM", "92.8 / 87.2 / 81.6", "81.9 / 76.0 / 70.2", "-",
     "91.4 / 80.3 / 72.7", "80.5 / 67.9 / 60.0"},
    {"the same + spelling repair", "92.8 / 87.1 / 81.2", "87.2 / 81.1 / 75.0", "-",
     "91.1 / 79.9 / 73.5", "85.5 / 73.4 / 66.5"},
    {"stems + letters, linear SVM", "93.1 / 87.7 / 82.1", "-", "-", "91.9 / 81.6 / 73.8", "-"},
    {"logistic regression", "92.6 / 87.2 / 81.5", "81.2 / 74.7 / 69.8", "-", "91.8 / 81.3 / 74.8",
     "81.0 / 68.6 / 61.8"},
    {"words + letters + vectors", "-    / 90.1 / 84.5", "-    / 70.0 / 65.1", "-",
     "-    / 82.7 / 76.1", "-    / 57.4 / 52.0"},
    {"fastText, one-vs-all", "90.7 / 82.2 / 72.0", "79.0 / 71.3 / 60.6", ".939 / .891 / .842",
     "89.7 / 80.0 / 68.9", "75.7 / 68.2 / 58.0"},
    {"BM25, nearest example", "83.6 / 77.2 / 71.2", "57.9 / 52.7 / 49.6", ".848 / .822 / .806",
     "80.6 / 66.7 / 60.9", "54.2 / 44.3 / 39.1"},
    {"class centroid, cosine", "85.7 / 82.3 / 78.6", "74.8 / 70.2 / 66.6", "-",
     "82.7 / 77.5 / 72.6", "72.8 / 66.2 / 61.1"},
    {"fitted mix (abstention only)", "-", "-", ".965 / .946 / .929", "-", "-"},
    {"published: SVM; BERT (full)", "91.0; 96.9", "-", ".942 (BERT)", "-", "-"},
};

static void
print_ours(const char *name, const char *data, const struct language_words *known)
{
    static const char *const files[3] = {"train.tsv", "train_20.tsv", "train_10.tsv"};
    char *clinc = memory_format(NULL, "%s/clinc150", data);
    char *banking = memory_format(NULL, "%s/banking77", data);
    struct figures c[3], b[3];
    int i;

    for (i = 0; i < 3; i++) {
        c[i] = measure(clinc, files[i], true, known);
        b[i] = measure(banking, files[i], false, known);
    }
    printf("%-29s %.1f / %.1f / %.1f   %.1f / %.1f / %.1f   .%03.0f / .%03.0f / .%03.0f   "
           "%.1f / %.1f / %.1f   %.1f / %.1f / %.1f\n",
           name, c[0].right, c[1].right, c[2].right, c[0].right_typos, c[1].right_typos,
           c[2].right_typos, 1000 * c[0].area, 1000 * c[1].area, 1000 * c[2].area, b[0].right,
           b[1].right, b[2].right, b[0].right_typos, b[1].right_typos, b[2].right_typos);
    talloc_free(clinc);
    talloc_free(banking);
}

static void
print_table(const char *data, const struct language_words *known)
{
    size_t i;

    printf("Accuracy in %%, full / 20 / 10 examples a label; outside: AUROC of the best score\n");
    printf("%-29s %-20s %-20s %-20s %-20s %s\n", "", "CLINC150", "typing errors", "outside",
           "BANKING77", "typing errors");
    for (i = 0; i < sizeof(references) / sizeof(references[0]); i++) {
        printf("%-29s %-20s %-20s %-20s %-20s %s\n", references[i][0], references[i][1],
               references[i][2], references[i][3], references[i][4], references[i][5]);
    }
    print_ours("hutbell without word vectors", data,
               &(struct language_words){.ordinary = known->ordinary});
    if (known->vectors != NULL) {
        print_ours("hutbell", data, known);
    }
}

int
main(int count, char **arguments)
{
    static const char made[] = KB_FOLDER "/words/en.vectors";
    void *arena = memory_must(talloc_new(NULL));
    struct language_words known = {NULL, NULL};

    if (count < 2 || count > 3) {
        fprintf(stderr, "usage: match DATA [VECTORS]\n");
        return 2;
    }
    known.ordinary = read_ordinary(arena, KB_FOLDER "/words/en-ordinary.txt");
    if (count == 3 || access(made, R_OK) == 0) {
        known.vectors = map_vectors(arena, count == 3 ? arguments[2] : made);
    }
    print_table(arguments[1], &known);
    talloc_free(arena);
    return 0;
}
