/* dice.h: random numbers that are the same on every machine.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * SplitMix64 (Steele, Lea and Flood, 2014): a counter in steps of the golden ratio, mixed. Any seed
 * will do, and a stream for each try comes from the seed and the number of the try.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  guint64 state;
} PpDice;

static inline guint64
pp_dice_roll (PpDice *self)
{
  guint64 z = self->state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

/* The stream of one try. */
static inline PpDice
pp_dice_make (guint64 seed,
              guint64 number)
{
  PpDice outer = { seed };

  return (PpDice) { pp_dice_roll (&outer) ^ (number * G_GUINT64_CONSTANT (0xd1342543de82ef95)) };
}

/* 0 to under 1. */
static inline double
pp_dice_share (PpDice *self)
{
  return (double) (pp_dice_roll (self) >> 11) * 0x1p-53;
}

static inline double
pp_dice_between (PpDice *self,
                 double  least,
                 double  most)
{
  return least + (most - least) * pp_dice_share (self);
}

/* 0 to under `n`, which is at least 1. */
static inline guint
pp_dice_pick (PpDice *self,
              guint   n)
{
  return (guint) (((pp_dice_roll (self) >> 32) * n) >> 32);
}

static inline gboolean
pp_dice_chance (PpDice *self,
                double  share)
{
  return pp_dice_share (self) < share;
}

G_END_DECLS
