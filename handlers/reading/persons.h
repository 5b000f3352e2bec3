/* Who is spoken of, besides the writer: one list for all readers that need to know it. */
#ifndef PERSONS_H
#define PERSONS_H

/* Kin and pronouns, English and Spanish; for token_among(). "El" is none: mostly an article. */
extern const char person_words[];

#endif
