/*
 * Who is spoken of, besides the writer: one list for readings, charges, blood pressures,
 * introductions and what runs out. Ages are read by a list of their own, with children and
 * neighbours (ages.c).
 */
#ifndef PERSONS_H
#define PERSONS_H

/* Kin, friends and pronouns, English and Spanish; for token_among(). "El" is none, for it is mostly
 * an article; and "son" is a verb too, where Spanish may be meant. */
extern const char person_words[];

#endif
