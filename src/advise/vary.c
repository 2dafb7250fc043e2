/* vary.c: a layout much like another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rubber is a sum of a few waves over the glass, each along a way and with a beginning of its
 * own, long against a piece: so a flower goes with the leaf that it lies on. Towards an edge
 * nothing is pulled across it. A piece turns as the rubber turns under it, which is half its curl.
 */
#include "advise/vary.h"

#include "advise/dice.h"
#include "shape/background.h"

#define WAVES 4
#define LONGEST 1.6 /* waves on the lesser side */
#define SHORTEST 0.7

typedef struct
{
  double kx, ky;  /* radians a mm */
  double phase;
  double dx, dy;  /* mm */
} Wave;

typedef struct
{
  PpBox box;
  Wave  waves[WAVES];
} Rubber;

typedef struct
{
  PpPoint by;   /* mm */
  double  turn; /* degrees clockwise */
} Pull;

static Rubber
make_rubber (const PpPanel *panel,
             guint          number)
{
  Rubber self = { .box = pp_background_get_box (panel->background) };
  double side = fmin (pp_box_width (self.box), pp_box_height (self.box));
  PpDice dice = pp_dice_make (number, 0);

  for (guint i = 0; i < WAVES; i++)
    {
      Wave *wave = &self.waves[i];
      double way = pp_dice_between (&dice, 0, 2 * G_PI);
      double pull = pp_dice_between (&dice, 0, 2 * G_PI);
      double k = 2 * G_PI * pp_dice_between (&dice, SHORTEST, LONGEST) / side;

      wave->kx = k * cos (way);
      wave->ky = k * sin (way);
      wave->phase = pp_dice_between (&dice, 0, 2 * G_PI);
      wave->dx = PP_VARY_SHARE * side / WAVES * cos (pull);
      wave->dy = PP_VARY_SHARE * side / WAVES * sin (pull);
    }
  return self;
}

/* 1 in the middle of a side from 0 to `length`, 0 at its ends and beyond. */
static double
fade (double at,
      double length)
{
  double share = CLAMP (at / length, 0, 1);

  return 4 * share * (1 - share);
}

static Pull
pull_at (const Rubber *self,
         PpPoint       p)
{
  Pull pull = { { 0, 0 }, 0 };

  for (guint i = 0; i < WAVES; i++)
    {
      const Wave *wave = &self->waves[i];
      double angle = wave->kx * p.x + wave->ky * p.y + wave->phase;

      pull.by.x += wave->dx * sin (angle);
      pull.by.y += wave->dy * sin (angle);
      pull.turn += (wave->dy * wave->kx - wave->dx * wave->ky) * cos (angle) / 2 * 180 / G_PI;
    }
  pull.by.x *= fade (p.x - self->box.x0, pp_box_width (self->box));
  pull.by.y *= fade (p.y - self->box.y0, pp_box_height (self->box));
  pull.turn = CLAMP (pull.turn, -PP_VARY_TURN, PP_VARY_TURN);
  return pull;
}

static PpPlacement *
vary_placement (const Rubber      *self,
                const PpPlacement *placement)
{
  PpPlacement draft = *placement;
  Pull pull;

  if (placement->glued_at != NULL || placement->pinned || placement->pocket != NULL)
    return pp_placement_ref (placement);
  pull = pull_at (self, (PpPoint) { placement->x, placement->y });
  draft.x += pull.by.x;
  draft.y += pull.by.y;
  draft.rotation += pull.turn;
  return pp_placement_new (&draft, NULL);
}

PpPanel *
pp_vary_new (const PpPanel *panel,
             guint          number)
{
  g_autoptr (GPtrArray) placements = NULL;
  PpPanel draft, *varied;
  Rubber rubber;

  g_return_val_if_fail (panel != NULL, NULL);

  if (number == 0)
    return pp_panel_ref (panel);
  rubber = make_rubber (panel, number);
  placements = g_ptr_array_new_with_free_func ((GDestroyNotify) pp_placement_unref);
  for (guint i = 0; i < panel->placements->len; i++)
    g_ptr_array_add (placements, vary_placement (&rubber, pp_panel_placement (panel, i)));
  draft = *panel;
  draft.placements = placements;
  varied = pp_panel_new (&draft, NULL);
  return varied != NULL ? varied : pp_panel_ref (panel);
}
