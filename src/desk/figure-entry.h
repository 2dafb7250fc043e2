/* figure-entry.h: a field for one figure, as makers write it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It holds an exact value and shows it rounded: what was not typed keeps its value to the last
 * digit, and only what the maker typed is ever committed, by Return or by leaving the field.
 * Escape puts the old text back. Up and down step the value, with Shift further. What cannot be
 * read stays as typed, marked, with a sentence under it. Kinds of figures are classes of their
 * own: length-entry.h, angle-entry.h, count-entry.h, load-entry.h.
 * Signal: committed (double value, gboolean stepped), another value than before; stepped ones
 * follow one another fast and may be one step of undo.
 * Properties: "titled-by", the GtkLabel that names it; "may-be-empty", then an empty field is the
 * value NAN; "placeholder", what an empty field shows.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PP_TYPE_FIGURE_ENTRY (pp_figure_entry_get_type ())
G_DECLARE_DERIVABLE_TYPE (PpFigureEntry, pp_figure_entry, PP, FIGURE_ENTRY, GtkWidget)

struct _PpFigureEntryClass
{
  GtkWidgetClass parent_class;

  /* FALSE, and `value` untouched, for what is no such figure. */
  gboolean    (*parse)   (PpFigureEntry *self,
                          const char    *text,
                          double        *value);
  /* As it stands in the field. (transfer full) */
  char       *(*format)  (PpFigureEntry *self,
                          double         value);
  /* As it stands in a sentence, with its unit. (transfer full) */
  char       *(*spell)   (PpFigureEntry *self,
                          double         value);
  double      (*get_step) (PpFigureEntry *self,
                          gboolean       large);
  /* What to do about a text that cannot be read, one sentence. (transfer none) */
  const char *(*get_hint) (PpFigureEntry *self);
};

double   pp_figure_entry_get_value    (PpFigureEntry *self);
/* Commits nothing. What the maker is typing stays if the value is the one the field has. */
void     pp_figure_entry_set_value    (PpFigureEntry *self,
                                       double         value);
/* Values that may be typed, both ends included; without it any. */
void     pp_figure_entry_set_range    (PpFigureEntry *self,
                                       double         least,
                                       double         most);
/* What is taken while the field is empty, shown in it as "about 25"; `figure` without unit. */
void     pp_figure_entry_set_estimate (PpFigureEntry *self,
                                       const char    *figure);
/* Takes what was typed, as Return does. */
void     pp_figure_entry_commit       (PpFigureEntry *self);
/* Puts the old text back; TRUE if another one stood there. */
gboolean pp_figure_entry_put_back     (PpFigureEntry *self);

/* TRUE while something stands there that cannot be taken, and a sentence under it says why. */
gboolean pp_figure_entry_has_fault    (PpFigureEntry *self);

/* For the kinds: the unit behind the field, "" for none, and how it is called in full. */
void     pp_figure_entry_set_unit     (PpFigureEntry *self,
                                       const char    *unit,
                                       const char    *spoken);

/* Reads a figure without unit, "12", "12,5" or "4 1/2", as pp_length_parse() reads it. */
gboolean pp_figure_parse              (const char    *text,
                                       double        *value);
/* To a tenth, whole where it is. (transfer full) */
char    *pp_figure_format             (double         value);

G_END_DECLS
