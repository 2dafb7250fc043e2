/* stack.h: small panels for tests, settled, with their joints.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "check/mass.h"

G_BEGIN_DECLS

/* Filled by the functions below and by writing to its fields; used up by test_stack_new(). */
typedef struct
{
  PpPanel    panel;
  PpWire     wire;    /* used if from is set */
  PpDisplay  display;
  PpAdhesive adhesive;
} TestDraft;

typedef struct
{
  PpPanel *panel;
  PpScene *scene;
  PpRest **rests;
  PpJoint **joints;
  PpMass   mass;
} TestStack;

/* A rectangle of 2500 kg/m³. */
void       test_draft_init      (TestDraft  *self,
                                 double      width,
                                 double      height,
                                 double      thickness);
/* In place of the rectangle. */
void       test_draft_set_back  (TestDraft          *self,
                                 const PpBackground *back);
void       test_draft_add_hole  (TestDraft  *self,
                                 const char *id,
                                 double      x,
                                 double      y,
                                 double      diameter);
/* A wire between the holes "a" and "b", its length NAN if taut. */
void       test_draft_add_wire  (TestDraft  *self,
                                 double      length);
/* `outline` as test_outline(); `draft` (nullable) says what is not given here. */
void       test_draft_add_piece (TestDraft     *self,
                                 const char    *id,
                                 const char    *outline,
                                 double         thickness,
                                 double         mass,
                                 const PpPiece *draft);
void       test_draft_place     (TestDraft  *self,
                                 const char *id,
                                 const char *piece,
                                 double      x,
                                 double      y);
void       test_draft_add_fused (TestDraft  *self,
                                 const char *id,
                                 const char *outline,
                                 double      thickness,
                                 double      density);
/* Settles all, upward and downward pass. (transfer full) */
TestStack *test_stack_new       (TestDraft  *draft);
void       test_stack_free      (TestStack  *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (TestStack, test_stack_free)

G_END_DECLS
