/* side-layout.c: a picture and a column of paper beside it, or under it where the room is narrow.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "desk/side-layout.h"

#include "desk/em.h"

#define WORK_EM 24.0
#define PAPER_LEAST_EM 14.0
#define BELOW_SHARE 0.5 /* of the height, of the paper under the work */

struct _PpSideLayout
{
  GtkLayoutManager parent_instance;
  double           work_em;
  double           paper_em;
  guint            paper_most;
};

G_DEFINE_FINAL_TYPE (PpSideLayout, pp_side_layout, GTK_TYPE_LAYOUT_MANAGER)

enum
{
  PROP_WORK_EM = 1,
  PROP_PAPER_EM,
  PROP_PAPER_MOST,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

typedef struct
{
  int least;
  int natural;
} Sizes;

typedef struct
{
  GtkWidget *work;
  GtkWidget *paper;      /* NULL: there is none to be seen */
  int        work_least; /* px, beside the paper */
  Sizes      paper_width;
  gboolean   is_set;     /* "paper-em" is */
} Pair;

static Sizes
measure (GtkWidget      *child,
         GtkOrientation  orientation,
         int             for_size)
{
  Sizes sizes;

  gtk_widget_measure (child, orientation, for_size, &sizes.least, &sizes.natural, NULL, NULL);
  return sizes;
}

static Sizes
measure_paper (const PpSideLayout *self,
               GtkWidget          *paper,
               double              em)
{
  Sizes sizes = measure (paper, GTK_ORIENTATION_HORIZONTAL, -1);
  double wanted = self->paper_em * em;
  double width = wanted;

  if (wanted <= 0)
    return sizes;
  if (self->paper_most > 0)
    width = MAX (MIN (wanted, self->paper_most), MIN (wanted, PAPER_LEAST_EM * em));
  sizes.natural = MAX (sizes.least, (int) width);
  return sizes;
}

static Pair
pair_of (PpSideLayout *self,
         GtkWidget    *widget)
{
  double em = pp_em_of (widget);
  Pair pair = { .work = gtk_widget_get_first_child (widget) };
  GtkWidget *paper = gtk_widget_get_next_sibling (pair.work);

  if (paper == NULL || !gtk_widget_should_layout (paper))
    return pair;
  pair.paper = paper;
  pair.is_set = self->paper_em > 0;
  pair.work_least = MAX (measure (pair.work, GTK_ORIENTATION_HORIZONTAL, -1).least,
                         (int) (self->work_em * em));
  pair.paper_width = measure_paper (self, paper, em);
  return pair;
}

/* FALSE: it lies below. `width` is all there is, or -1 for as much as it likes. A paper that has no
 * width of its own is as wide as one column of it if not as wide as all. */
static gboolean
is_beside (const Pair *pair,
           int         width,
           int        *paper)
{
  int left = width - pair->work_least;

  if (width < 0 || left >= pair->paper_width.natural)
    *paper = pair->paper_width.natural;
  else
    *paper = pair->is_set ? MAX (left, pair->paper_width.least) : pair->paper_width.least;
  return width < 0 || left >= *paper;
}

static Sizes
measure_width (const Pair *pair)
{
  Sizes work = measure (pair->work, GTK_ORIENTATION_HORIZONTAL, -1);

  if (pair->paper == NULL)
    return work;
  return (Sizes) { MAX (work.least, pair->paper_width.least),
                   MAX (work.natural, pair->work_least) + pair->paper_width.natural };
}

static Sizes
measure_height (const Pair *pair,
                int         width)
{
  Sizes work, paper;
  int across;

  if (pair->paper == NULL)
    return measure (pair->work, GTK_ORIENTATION_VERTICAL, width);
  if (!is_beside (pair, width, &across))
    {
      work = measure (pair->work, GTK_ORIENTATION_VERTICAL, width);
      paper = measure (pair->paper, GTK_ORIENTATION_VERTICAL, width);
      return (Sizes) { work.least + paper.least, work.natural + paper.natural };
    }
  work = measure (pair->work, GTK_ORIENTATION_VERTICAL, width >= 0 ? width - across : -1);
  paper = measure (pair->paper, GTK_ORIENTATION_VERTICAL, across);
  return (Sizes) { MAX (work.least, paper.least), MAX (work.natural, paper.natural) };
}

static void
pp_side_layout_measure (GtkLayoutManager *manager,
                        GtkWidget        *widget,
                        GtkOrientation    orientation,
                        int               for_size,
                        int              *minimum,
                        int              *natural,
                        int              *minimum_baseline,
                        int              *natural_baseline)
{
  Pair pair = pair_of (PP_SIDE_LAYOUT (manager), widget);
  Sizes sizes = orientation == GTK_ORIENTATION_HORIZONTAL ? measure_width (&pair)
                                                          : measure_height (&pair, for_size);

  *minimum = sizes.least;
  *natural = MAX (sizes.least, sizes.natural);
}

static void
put (GtkWidget *child,
     int        x,
     int        y,
     int        width,
     int        height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation) { x, y, width, height }, -1);
}

static void
put_below (const Pair *pair,
           int         width,
           int         height)
{
  int least = measure (pair->paper, GTK_ORIENTATION_VERTICAL, width).least;
  int left = height - measure (pair->work, GTK_ORIENTATION_VERTICAL, width).least;
  int paper = MAX (MIN ((int) (height * BELOW_SHARE), left), least);

  put (pair->work, 0, 0, width, height - paper);
  put (pair->paper, 0, height - paper, width, paper);
}

static void
pp_side_layout_allocate (GtkLayoutManager *manager,
                         GtkWidget        *widget,
                         int               width,
                         int               height,
                         int               baseline)
{
  Pair pair = pair_of (PP_SIDE_LAYOUT (manager), widget);
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int paper;

  if (pair.paper == NULL)
    put (pair.work, 0, 0, width, height);
  else if (!is_beside (&pair, width, &paper))
    put_below (&pair, width, height);
  else
    {
      put (pair.work, from_right ? paper : 0, 0, width - paper, height);
      put (pair.paper, from_right ? 0 : width - paper, 0, paper, height);
    }
}

static GtkSizeRequestMode
pp_side_layout_get_request_mode (GtkLayoutManager *manager,
                                 GtkWidget        *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
pp_side_layout_get_property (GObject    *object,
                             guint       id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  PpSideLayout *self = PP_SIDE_LAYOUT (object);

  if (id == PROP_WORK_EM)
    g_value_set_double (value, self->work_em);
  else if (id == PROP_PAPER_EM)
    g_value_set_double (value, self->paper_em);
  else if (id == PROP_PAPER_MOST)
    g_value_set_uint (value, self->paper_most);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
pp_side_layout_set_property (GObject      *object,
                             guint         id,
                             const GValue *value,
                             GParamSpec   *pspec)
{
  PpSideLayout *self = PP_SIDE_LAYOUT (object);

  if (id == PROP_WORK_EM)
    self->work_em = g_value_get_double (value);
  else if (id == PROP_PAPER_EM)
    self->paper_em = g_value_get_double (value);
  else if (id == PROP_PAPER_MOST)
    self->paper_most = g_value_get_uint (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (object));
}

static void
pp_side_layout_class_init (PpSideLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  G_OBJECT_CLASS (klass)->get_property = pp_side_layout_get_property;
  G_OBJECT_CLASS (klass)->set_property = pp_side_layout_set_property;
  manager_class->measure = pp_side_layout_measure;
  manager_class->allocate = pp_side_layout_allocate;
  manager_class->get_request_mode = pp_side_layout_get_request_mode;
  props[PROP_WORK_EM] = g_param_spec_double ("work-em", NULL, NULL, 0, G_MAXDOUBLE, WORK_EM,
                                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_PAPER_EM] = g_param_spec_double ("paper-em", NULL, NULL, 0, G_MAXDOUBLE, 0,
                                              G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_PAPER_MOST] = g_param_spec_uint ("paper-most", NULL, NULL, 0, G_MAXINT, 0,
                                              G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
}

static void
pp_side_layout_init (PpSideLayout *self)
{
  self->work_em = WORK_EM;
}
