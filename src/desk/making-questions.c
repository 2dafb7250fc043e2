/* making-questions.c: what is asked of every piece.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/making-questions.h"

#include "desk/choice.h"
#include "desk/count-entry.h"
#include "desk/length-entry.h"
#include "desk/mass-entry.h"
#include "desk/template.h"
#include "desk/text-entry.h"
#include "desk/wrap-layout.h"
#include "panel/i18n.h"
#include "panel/measure.h"
#include "shape/height.h"

#define N_KINDS 5
#define N_TOUCHES 6
#define N_LIGHTS 3
#define COLUMNS 3 /* of pictures */
#define MOST_COUNT 9999
#define MOST_THICKNESS 100.0 /* mm */
#define MOST_WEIGHT 1e5 /* g */

struct _PpMakingQuestions
{
  GtkWidget      parent_instance;
  PpPieceBench  *bench;
  gboolean       is_showing;
  PpChoice      *kinds[N_KINDS];
  PpChoice      *touches[N_TOUCHES];
  PpChoice      *lights[N_LIGHTS];

  PpTextEntry   *name;
  GtkLabel      *name_title;
  PpFigureEntry *count;
  GtkWidget     *kind_box;
  GtkWidget     *touch_box;
  GtkWidget     *gap_part;
  PpFigureEntry *gap;
  PpFigureEntry *offcuts;
  PpFigureEntry *offcut;
  PpFigureEntry *thickness;
  PpFigureEntry *weight;
  PpFigureEntry *weighed;
  GtkWidget     *light_box;
};

G_DEFINE_FINAL_TYPE (PpMakingQuestions, pp_making_questions, GTK_TYPE_WIDGET)

static void
set_estimate (PpFigureEntry *entry,
              char          *figure)
{
  pp_figure_entry_set_estimate (entry, figure);
  g_free (figure);
}

/* The choices are those of the piece itself, so that what was not answered is seen too. */
static void
show_choices (PpMakingQuestions *self,
              const PpPiece     *piece)
{
  double gap;
  PpTouch touch = pp_touch_of_piece (piece, &gap);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->kinds[piece->kind]), TRUE);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->touches[touch]), TRUE);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->lights[pp_light_of_piece (piece)]), TRUE);
  gtk_widget_set_sensitive (self->gap_part, touch != PP_TOUCH_ALL);
}

static void
show_estimates (PpMakingQuestions *self,
                const PpPiece     *piece)
{
  PpUnits units = pp_piece_bench_get_units (self->bench);
  double gap, mass = pp_piece_get_mass (piece);
  g_autofree char *weight = pp_figure_format (units == PP_UNITS_INCH ? mass / PP_GRAMS_PER_OUNCE
                                                                     : round (mass));

  pp_touch_of_piece (piece, &gap);
  set_estimate (self->gap, pp_length_format_bare (gap, units));
  set_estimate (self->thickness, pp_length_format_bare (piece->thickness, units));
  if (isnan (piece->mass))
    pp_figure_entry_set_estimate (self->weight, weight);
  else
    g_object_set (self->weight, "placeholder", weight, NULL);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->name), piece->name);
}

static void
show_answers (PpMakingQuestions *self,
              const PpMaking    *making)
{
  const PpAnswers *answers = &making->answers;

  pp_text_entry_set_words (self->name, making->name);
  pp_figure_entry_set_value (self->count, answers->count);
  pp_figure_entry_set_value (self->gap, answers->gap);
  pp_figure_entry_set_value (self->offcuts, making->offcuts > 0 ? making->offcuts : NAN);
  pp_figure_entry_set_value (self->offcut, making->offcut);
  pp_figure_entry_set_value (self->thickness, answers->thickness);
  pp_figure_entry_set_value (self->weight, answers->weight);
  pp_figure_entry_set_value (self->weighed, answers->weighed);
}

static void
show_cb (PpPieceBench      *bench,
         PpMakingQuestions *self)
{
  const PpPiece *piece = pp_piece_bench_get_piece (bench);

  self->is_showing = TRUE;
  show_answers (self, pp_piece_bench_get_making (bench));
  if (piece != NULL)
    {
      show_choices (self, piece);
      show_estimates (self, piece);
    }
  self->is_showing = FALSE;
}

static PpMaking
begin (PpMakingQuestions *self)
{
  return pp_making_copy (pp_piece_bench_get_making (self->bench));
}

static void
named_cb (PpTextEntry       *entry,
          const char        *words,
          PpMakingQuestions *self)
{
  g_auto (PpMaking) next = begin (self);

  pp_making_set_text (&next.name, words);
  pp_piece_bench_change (self->bench, &next, NULL);
}

/* The gap is what was counted where both are told; told by a ruler it is no longer counted. */
static void
take_offcuts (PpMaking *making)
{
  if (making->offcuts > 0 && !isnan (making->offcut))
    making->answers.gap = making->offcuts * making->offcut;
}

static void
figure_cb (PpFigureEntry     *entry,
           double             value,
           gboolean           stepped,
           PpMakingQuestions *self)
{
  g_auto (PpMaking) next = begin (self);
  g_autofree char *key = g_strdup_printf ("%p", (void *) entry);

  if (entry == self->count)
    next.answers.count = (guint) value;
  else if (entry == self->thickness)
    next.answers.thickness = value;
  else if (entry == self->weight)
    next.answers.weight = value;
  else if (entry == self->weighed)
    next.answers.weighed = (guint) value;
  else if (entry == self->gap)
    {
      next.answers.gap = value;
      next.offcuts = 0;
      next.offcut = NAN;
    }
  else if (entry == self->offcuts)
    next.offcuts = isnan (value) ? 0 : (guint) value;
  else
    next.offcut = value;
  take_offcuts (&next);
  pp_piece_bench_change (self->bench, &next, stepped ? key : NULL);
}

static gboolean
is_chosen (PpMakingQuestions *self,
           PpChoice          *choice)
{
  return !self->is_showing && gtk_check_button_get_active (GTK_CHECK_BUTTON (choice));
}

static int
find_choice (PpChoice **choices,
             guint      n,
             PpChoice  *choice)
{
  for (guint i = 0; i < n; i++)
    if (choices[i] == choice)
      return (int) i;
  return PP_AS_MADE;
}

static void
kind_cb (PpChoice          *choice,
         PpMakingQuestions *self)
{
  g_auto (PpMaking) next = { 0 };

  if (!is_chosen (self, choice))
    return;
  next = begin (self);
  next.answers.kind = find_choice (self->kinds, N_KINDS, choice);
  pp_piece_bench_change (self->bench, &next, "kind");
}

static void
touch_cb (PpChoice          *choice,
          PpMakingQuestions *self)
{
  g_auto (PpMaking) next = { 0 };

  if (!is_chosen (self, choice))
    return;
  next = begin (self);
  next.answers.touch = find_choice (self->touches, N_TOUCHES, choice);
  pp_piece_bench_change (self->bench, &next, "touch");
}

/* How much light is asked next. */
static void
touch_pointed_cb (PpChoice          *choice,
                  PpMakingQuestions *self)
{
  if (choice != self->touches[PP_TOUCH_ALL])
    gtk_widget_grab_focus (GTK_WIDGET (self->gap));
}

static void
light_cb (PpChoice          *choice,
          PpMakingQuestions *self)
{
  g_auto (PpMaking) next = { 0 };

  if (!is_chosen (self, choice))
    return;
  next = begin (self);
  next.answers.light = find_choice (self->lights, N_LIGHTS, choice);
  pp_piece_bench_change (self->bench, &next, "light");
}

static void
pp_making_questions_dispose (GObject *object)
{
  pp_template_dispose (GTK_WIDGET (object), PP_TYPE_MAKING_QUESTIONS);
  G_OBJECT_CLASS (pp_making_questions_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, name);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, name_title);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, count);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, kind_box);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, touch_box);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, gap_part);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, gap);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, offcuts);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, offcut);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, thickness);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, weight);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, weighed);
  gtk_widget_class_bind_template_child (klass, PpMakingQuestions, light_box);
  gtk_widget_class_bind_template_callback (klass, named_cb);
  gtk_widget_class_bind_template_callback (klass, figure_cb);
}

static void
pp_making_questions_class_init (PpMakingQuestionsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = pp_making_questions_dispose;
  g_type_ensure (PP_TYPE_CHOICE);
  g_type_ensure (PP_TYPE_COUNT_ENTRY);
  g_type_ensure (PP_TYPE_LENGTH_ENTRY);
  g_type_ensure (PP_TYPE_MASS_ENTRY);
  g_type_ensure (PP_TYPE_TEXT_ENTRY);
  g_type_ensure (PP_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/petalpane/Petalpane/making-questions.ui");
  bind_children (widget_class);
}

typedef struct
{
  const char  *words;
  PpSketchKind sketch;
} Row;

static const Row kind_rows[N_KINDS] = {
  [PP_KIND_FLOWER] = { N_("Flower") }, [PP_KIND_BUD] = { N_("Bud") },
  [PP_KIND_LEAF] = { N_("Leaf") },     [PP_KIND_STEM] = { N_("Stem") },
  [PP_KIND_FILLER] = { N_("Filler") },
};

static const Row touch_rows[N_TOUCHES] = {
  [PP_TOUCH_ALL] = { N_("All of it"), PP_SKETCH_TOUCH_ALL },
  [PP_TOUCH_MIDDLE] = { N_("Its middle"), PP_SKETCH_TOUCH_MIDDLE },
  [PP_TOUCH_RIM] = { N_("Its rim"), PP_SKETCH_TOUCH_RIM },
  [PP_TOUCH_ENDS] = { N_("Two ends"), PP_SKETCH_TOUCH_ENDS },
  [PP_TOUCH_BASE] = { N_("Its base end"), PP_SKETCH_TOUCH_BASE },
  [PP_TOUCH_TIP] = { N_("Its tip end"), PP_SKETCH_TOUCH_TIP },
};

static const Row light_rows[N_LIGHTS] = {
  [PP_LIGHT_NONE] = { N_("Can’t see it") },
  [PP_LIGHT_SHADOW] = { N_("A shadow") },
  [PP_LIGHT_CLEAR] = { N_("The line, clearly") },
};

static void
add_choices (PpMakingQuestions *self,
             GtkWidget         *box,
             PpChoice         **choices,
             const Row         *rows,
             guint              n,
             GCallback          callback)
{
  for (guint i = 0; i < n; i++)
    {
      choices[i] = g_object_new (PP_TYPE_CHOICE, "words", _(rows[i].words), "sketch",
                                 rows[i].sketch, NULL);
      if (rows[i].sketch == PP_SKETCH_NONE)
        gtk_widget_add_css_class (GTK_WIDGET (choices[i]), "pp-slim");
      gtk_check_button_set_group (GTK_CHECK_BUTTON (choices[i]),
                                  i > 0 ? GTK_CHECK_BUTTON (choices[0]) : NULL);
      gtk_widget_set_hexpand (GTK_WIDGET (choices[i]), TRUE);
      if (GTK_IS_GRID (box))
        gtk_grid_attach (GTK_GRID (box), GTK_WIDGET (choices[i]), (int) i % COLUMNS,
                         (int) i / COLUMNS, 1, 1);
      else
        gtk_box_append (GTK_BOX (box), GTK_WIDGET (choices[i]));
      g_signal_connect (choices[i], "toggled", callback, self);
    }
}

static void
set_ranges (PpMakingQuestions *self)
{
  pp_figure_entry_set_range (self->count, 1, MOST_COUNT);
  pp_figure_entry_set_range (self->weighed, 1, MOST_COUNT);
  pp_figure_entry_set_range (self->offcuts, 1, 100);
  pp_figure_entry_set_range (self->offcut, 0.1, MOST_THICKNESS);
  pp_figure_entry_set_range (self->gap, 0, PP_LYING_MOST_GAP);
  pp_figure_entry_set_range (self->thickness, 0.5, MOST_THICKNESS);
  pp_figure_entry_set_range (self->weight, 0.1, MOST_WEIGHT);
}

static void
pp_making_questions_init (PpMakingQuestions *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_choices (self, self->kind_box, self->kinds, kind_rows, N_KINDS, G_CALLBACK (kind_cb));
  add_choices (self, self->touch_box, self->touches, touch_rows, N_TOUCHES, G_CALLBACK (touch_cb));
  for (guint i = 0; i < N_TOUCHES; i++)
    g_signal_connect (self->touches[i], "pointed", G_CALLBACK (touch_pointed_cb), self);
  add_choices (self, self->light_box, self->lights, light_rows, N_LIGHTS, G_CALLBACK (light_cb));
  gtk_label_set_mnemonic_widget (self->name_title, GTK_WIDGET (self->name));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->name), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->name_title, NULL, -1);
  set_ranges (self);
}

void
pp_making_questions_set_bench (PpMakingQuestions *self,
                               PpPieceBench      *bench)
{
  PpUnits units;

  g_return_if_fail (PP_IS_MAKING_QUESTIONS (self) && PP_IS_PIECE_BENCH (bench));

  self->bench = bench;
  units = pp_piece_bench_get_units (bench);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (self->gap), units);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (self->offcut), units);
  pp_length_entry_set_units (PP_LENGTH_ENTRY (self->thickness), units);
  pp_mass_entry_set_units (PP_MASS_ENTRY (self->weight), units);
  g_signal_connect_object (bench, "changed", G_CALLBACK (show_cb), self, 0);
}
