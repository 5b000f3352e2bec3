/* A model as part of an image (image.h). */
#include "model.h"

#include "image.h"
#include "model_inside.h"

static void
usage_image(struct image *image, struct usage *usage)
{
    const size_t stems = usage->stems, labels = (size_t)usage->labels;

    image_array(image, &usage->often, stems);
    image_array(image, &usage->counts, stems * labels);
    image_array(image, &usage->said, labels + 1);
}

static void
index_image(struct image *image, struct phrase_index *index, size_t features)
{
    const size_t postings = index->begins[features];

    image_array(image, &index->begins, features + 1);
    image_array(image, &index->postings, postings);
}

void
model_image(struct image *image, struct model **of, const struct model_content *content)
{
    struct model *model = image_array(image, of, 1);

    image_array(image, &model->labels, model->phrase_count);
    image_array(image, &model->parts, model->phrase_count);
    image_array(image, &model->held_out, model->phrase_count);
    image_array(image, &model->first, (size_t)model->linear.labels);
    spelling_image(image, &model->spelling, content->ordinary);
    feature_space_image(image, &model->space, content->vectors);
    linear_image(image, &model->linear);
    net_image(image, &model->net);
    usage_image(image, &model->usage);
    index_image(image, &model->index, model->space.ends[BLOCK_PAIRS]);
    image_array(image, &model->lines.slots, (size_t)model->lines.mask + 1);
    image_same(image, &model->shorthand, content->shorthand);
    image_same(image, &model->vectors, content->vectors);
}
