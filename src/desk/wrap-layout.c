/* wrap-layout.c: children in a line where there is room, else in several lines.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/wrap-layout.h"

struct _PpWrapLayout
{
  GtkLayoutManager parent_instance;
  guint            spacing;
  guint            most;
};

G_DEFINE_FINAL_TYPE (PpWrapLayout, pp_wrap_layout, GTK_TYPE_LAYOUT_MANAGER)

enum
{
  PROP_SPACING = 1,
  PROP_MOST,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

/* Children that stand in one line. */
typedef struct
{
  const PpWrapLayout *layout;
  GtkWidget          *first;
  GtkWidget          *end;   /* the first of the next line, or NULL */
  int                 left;  /* px to give away */
  int                 n_expand;
} Line;

static GtkWidget *
skip_hidden (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static GtkWidget *
first_of (GtkWidget *widget)
{
  return skip_hidden (gtk_widget_get_first_child (widget));
}

static GtkWidget *
next_of (GtkWidget *child)
{
  return skip_hidden (gtk_widget_get_next_sibling (child));
}

/* In a line of `width` px. */
static int
natural_width (const PpWrapLayout *self,
               GtkWidget          *child,
               int                 width)
{
  int least, natural;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &natural, NULL, NULL);
  return MIN (MAX (MIN (natural, (int) self->most), least), width);
}

/* The line that begins with `first`. */
static Line
take_line (const PpWrapLayout *self,
           GtkWidget          *first,
           int                 width)
{
  Line line = { .layout = self, .first = first, .left = width };
  GtkWidget *child = first;

  while (child != NULL)
    {
      int natural = natural_width (self, child, width);
      int needed = child == first ? natural : natural + (int) self->spacing;

      if (child != first && needed > line.left)
        break;
      line.left -= needed;
      line.n_expand += gtk_widget_compute_expand (child, GTK_ORIENTATION_HORIZONTAL) ? 1 : 0;
      child = next_of (child);
    }
  line.end = child;
  return line;
}

/* What a child of the line gets; the last px of an uneven share goes to the last that expands. */
static int
take_width (Line      *line,
            GtkWidget *child,
            int        width)
{
  int extra = 0;

  if (gtk_widget_compute_expand (child, GTK_ORIENTATION_HORIZONTAL))
    {
      extra = line->left / line->n_expand;
      line->left -= extra;
      line->n_expand--;
    }
  return natural_width (line->layout, child, width) + extra;
}

static int
line_height (Line line,
             int  width)
{
  int height = 0;

  for (GtkWidget *child = line.first; child != line.end; child = next_of (child))
    {
      int natural;

      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, take_width (&line, child, width), NULL,
                          &natural, NULL, NULL);
      height = MAX (height, natural);
    }
  return height;
}

static void
measure_width (PpWrapLayout *self,
               GtkWidget    *widget,
               int          *minimum,
               int          *natural)
{
  *minimum = *natural = 0;
  for (GtkWidget *child = first_of (widget); child != NULL; child = next_of (child))
    {
      int wanted = natural_width (self, child, G_MAXINT);
      int least;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural += wanted + (*natural > 0 ? (int) self->spacing : 0);
    }
}

static int
measure_height (PpWrapLayout *self,
                GtkWidget    *widget,
                int           width)
{
  int height = 0;

  for (GtkWidget *child = first_of (widget); child != NULL;)
    {
      Line line = take_line (self, child, width);

      height += line_height (line, width) + (height > 0 ? (int) self->spacing : 0);
      child = line.end;
    }
  return height;
}

static void
pp_wrap_layout_measure (GtkLayoutManager *manager,
                        GtkWidget        *widget,
                        GtkOrientation    orientation,
                        int               for_size,
                        int              *minimum,
                        int              *natural,
                        int              *minimum_baseline,
                        int              *natural_baseline)
{
  PpWrapLayout *self = PP_WRAP_LAYOUT (manager);
  int least, wanted;

  measure_width (self, widget, &least, &wanted);
  if (orientation == GTK_ORIENTATION_VERTICAL)
    least = wanted = measure_height (self, widget, for_size >= 0 ? for_size : wanted);
  *minimum = least;
  *natural = wanted;
}

static void
allocate_line (Line           line,
               int             y,
               int             height,
               int             width,
               int             spacing,
               gboolean        from_right)
{
  int x = 0;

  for (GtkWidget *child = line.first; child != line.end; child = next_of (child))
    {
      int across = take_width (&line, child, width);
      int place = from_right ? width - x - across : x;

      gtk_widget_size_allocate (child, &(GtkAllocation) { place, y, across, height }, -1);
      x += across + spacing;
    }
}

static void
pp_wrap_layout_allocate (GtkLayoutManager *manager,
                         GtkWidget        *widget,
                         int               width,
                         int               height,
                         int               baseline)
{
  PpWrapLayout *self = PP_WRAP_LAYOUT (manager);
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int y = 0;

  for (GtkWidget *child = first_of (widget); child != NULL;)
    {
      Line line = take_line (self, child, width);
      int across = line_height (line, width);

      /* A single line fills the height, so that columns reach down. */
      if (y == 0 && line.end == NULL)
        across = MAX (across, height);
      allocate_line (line, y, across, width, (int) self->spacing, from_right);
      y += across + (int) self->spacing;
      child = line.end;
    }
}

static GtkSizeRequestMode
pp_wrap_layout_get_request_mode (GtkLayoutManager *manager,
                                 GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
pp_wrap_layout_get_property (GObject    *object,
                             guint       id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  if (id == PROP_SPACING)
    g_value_set_uint (value, PP_WRAP_LAYOUT (object)->spacing);
  else if (id == PROP_MOST)
    g_value_set_uint (value, PP_WRAP_LAYOUT (object)->most);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
pp_wrap_layout_set_property (GObject      *object,
                             guint         id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  if (id == PROP_SPACING)
    PP_WRAP_LAYOUT (object)->spacing = g_value_get_uint (value);
  else if (id == PROP_MOST)
    PP_WRAP_LAYOUT (object)->most = g_value_get_uint (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (object));
}

static void
pp_wrap_layout_class_init (PpWrapLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  G_OBJECT_CLASS (klass)->get_property = pp_wrap_layout_get_property;
  G_OBJECT_CLASS (klass)->set_property = pp_wrap_layout_set_property;
  manager_class->measure = pp_wrap_layout_measure;
  manager_class->allocate = pp_wrap_layout_allocate;
  manager_class->get_request_mode = pp_wrap_layout_get_request_mode;
  props[PROP_SPACING] = g_param_spec_uint ("spacing", NULL, NULL, 0, G_MAXINT, 0,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_MOST] = g_param_spec_uint ("most", NULL, NULL, 0, G_MAXINT, G_MAXINT,
                                        G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
}

static void
pp_wrap_layout_init (PpWrapLayout *self)
{
  self->most = G_MAXINT;
}
