/* even.h: places that even an arrangement out: midway, one step on, opposite across a middle line.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * mm, panel frame. A piece counts as the point where its origin lies.
 */
#pragma once

#include "panel/panel.h"

G_BEGIN_DECLS

typedef enum
{
  PP_EVEN_NONE,
  PP_EVEN_BETWEEN,  /* midway between `a` and `b` */
  PP_EVEN_ONWARD,   /* as far from `b` as that is from `a`, in one line */
  PP_EVEN_OPPOSITE, /* where `a` is seen in the upright line */
  PP_EVEN_MIDDLE,   /* on the upright line itself */
} PpEvenKind;

typedef struct
{
  PpEvenKind kind;
  PpPoint    at; /* the place; for NONE where it was asked for */
  PpPoint    a;
  PpPoint    b;
} PpEven;

/* The place nearest to `p` within `reach` that evens out `n` `others`, of which the nearest eight
 * are taken in pairs, or that is opposite to one of them in the upright line x = `middle`; of
 * equals the first kind. Where there is none the point on that line, if it is within reach. */
PpEven pp_even_find (const PpPoint *others,
                     guint          n,
                     PpPoint        p,
                     double         middle,
                     double         reach);

/* `placements` (ids, ended by NULL) at equal distances along the direction in which they lie
 * farther apart, across or down: the outermost stay, and none moves the other way. Fewer than three
 * stay as they are. An edit as in edit.h. */
PpPanel *pp_edit_space_evenly (const PpPanel      *panel,
                               const char * const *placements,
                               GError            **error);

G_END_DECLS
