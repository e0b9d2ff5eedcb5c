// Reads timelines with OpenTimelineIO's own library and says what is on at each frame of the edit.
// Paths come on standard input, one a line. For each file, fields between tabs:
//   timeline  frames of the edit, its rate, frame of its start timecode
//   dissolve  from, to (frames of the edit), name
//   visible   media, where a clip at real time begins and ends in it with its handles, and where the
//             media itself does, in frames of the media
//   frame     media, frame of it ("-" alone: nothing); in a dissolve the same of the outgoing clip
//   marker    name, frame of the edit
//   error     what the library or this reader has against it
// Places in time are the library's; only the time warp is applied here, for the library has no call
// that does: https://opentimelineio.readthedocs.io (time_scalar of LinearTimeWarp).
#include <cmath>
#include <fstream>
#include <iostream>
#include <opentimelineio/clip.h>
#include <opentimelineio/externalReference.h>
#include <opentimelineio/linearTimeWarp.h>
#include <opentimelineio/marker.h>
#include <opentimelineio/stack.h>
#include <opentimelineio/timeline.h>
#include <opentimelineio/track.h>
#include <opentimelineio/transition.h>
#include <sstream>
#include <stdexcept>

namespace otio = opentimelineio::OPENTIMELINEIO_VERSION;
using opentime::RationalTime;
using opentime::TimeRange;

namespace {

void check(otio::ErrorStatus const& status) {
  if (otio::is_error(status)) throw std::runtime_error(status.full_description);
}

// Times are doubles: what is so near to a frame is on it.
long whole(double value, char const* what) {
  const double nearest = std::round(value);
  if (std::fabs(value - nearest) > 1e-6)
    throw std::runtime_error(std::string(what) + ": " + std::to_string(value) + " is no frame");
  return std::lround(nearest);
}

long frames(RationalTime const& time, double rate) {
  return whole(time.rescaled_to(rate).value(), "a time of the edit");
}

double speed_of(otio::Clip const* clip) {
  double speed = 1;
  for (auto const& effect : clip->effects())
    if (auto warp = dynamic_cast<otio::LinearTimeWarp*>(effect.value)) speed *= warp->time_scalar();
  return speed;
}

// What an item shows at a time of its track; null in a gap.
otio::Clip* clip_at(otio::Track* track, otio::Item* item, RationalTime const& time) {
  otio::ErrorStatus status;
  if (auto inside = dynamic_cast<otio::Composition*>(item)) {
    auto const found = inside->child_at_time(track->transformed_time(time, item, &status), &status);
    check(status);
    return dynamic_cast<otio::Clip*>(found.value);
  }
  return dynamic_cast<otio::Clip*>(item);
}

void print_shown(otio::Track* track, otio::Item* item, RationalTime const& time) {
  auto* const clip = clip_at(track, item, time);
  if (!clip) {
    std::cout << "\t-";
    return;
  }
  otio::ErrorStatus status;
  auto const start = clip->trimmed_range(&status).start_time();
  check(status);
  auto const inside = track->transformed_time(time, clip, &status);
  check(status);
  auto* const media = clip->media_reference();
  auto const available = media->available_range();
  const double first = available ? available->start_time().rescaled_to(start.rate()).value() : 0;
  const long elapsed = whole((inside - start).rescaled_to(time.rate()).value(), "a time of a clip");
  const double place = elapsed * speed_of(clip) * start.rate() / time.rate();
  const long frame = whole(start.value() - first, "a clip's start") + std::lround(std::floor(place + 1e-9));
  std::cout << '\t' << media->name() << '\t' << frame;
}

void print_visible(otio::Clip const* clip) {
  auto const available = clip->media_reference()->available_range();
  if (!available || speed_of(clip) != 1) return;
  otio::ErrorStatus status;
  auto const visible = clip->visible_range(&status);
  check(status);
  const double rate = available->start_time().rate();
  std::cout << "visible\t" << clip->media_reference()->name() << '\t' << visible.start_time().value_rescaled_to(rate) << '\t'
            << visible.end_time_exclusive().value_rescaled_to(rate) << '\t' << available->start_time().value()
            << '\t' << available->end_time_exclusive().value() << '\n';
}

struct Dissolve {
  long from, to;
  size_t child;
};

std::vector<Dissolve> print_dissolves(otio::Track* track, double rate) {
  std::vector<Dissolve> found;
  auto const& children = track->children();
  for (size_t index = 0; index < children.size(); index++) {
    auto* const transition = dynamic_cast<otio::Transition*>(children[index].value);
    if (!transition) continue;
    otio::ErrorStatus status;
    auto const range = transition->range_in_parent(&status);
    check(status);
    if (!range) throw std::runtime_error(transition->name() + " has no place");
    found.push_back({ frames(range->start_time(), rate), frames(range->end_time_exclusive(), rate), index });
    std::cout << "dissolve\t" << found.back().from << '\t' << found.back().to << '\t' << transition->name() << '\n';
  }
  return found;
}

void print_track(otio::Track* track, long length, double rate) {
  otio::ErrorStatus status;
  auto const dissolves = print_dissolves(track, rate);
  for (auto const& clip : track->find_children<otio::Clip>(&status)) print_visible(clip.value);
  check(status);
  auto const& children = track->children();
  auto const item = [&](size_t index) { return dynamic_cast<otio::Item*>(children.at(index).value); };
  size_t next = 0;
  for (long frame = 0; frame < length; frame++) {
    const RationalTime time(static_cast<double>(frame), rate);
    while (next < dissolves.size() && dissolves[next].to <= frame) next++;
    std::cout << "frame";
    if (next < dissolves.size() && dissolves[next].from <= frame) {
      print_shown(track, item(dissolves[next].child + 1), time);
      print_shown(track, item(dissolves[next].child - 1), time);
    } else {
      auto const child = track->child_at_time(time, &status, true);
      check(status);
      auto* const shown = dynamic_cast<otio::Item*>(child.value);
      if (!shown) throw std::runtime_error("nothing is there at frame " + std::to_string(frame));
      print_shown(track, shown, time);
    }
    std::cout << '\n';
  }
}

void print_markers(otio::Timeline* timeline, double rate) {
  otio::ErrorStatus status;
  for (auto* const track : timeline->audio_tracks())
    for (auto const& clip : track->find_children<otio::Clip>(&status))
      for (auto const& marker : clip->markers()) {
        auto const start = clip->transformed_time(marker->marked_range().start_time(), timeline->tracks(), &status);
        check(status);
        std::cout << "marker\t" << marker->name() << '\t' << frames(start, rate) << '\n';
      }
}

void print_timeline(std::string const& path) {
  otio::ErrorStatus status;
  otio::SerializableObject::Retainer<otio::SerializableObject> const object(
      otio::SerializableObject::from_json_file(path, &status));
  check(status);
  auto* const timeline = dynamic_cast<otio::Timeline*>(object.value);
  if (!timeline || !timeline->global_start_time()) throw std::runtime_error("no timeline with a start");
  const double rate = timeline->global_start_time()->rate();
  const long length = frames(timeline->duration(&status), rate);
  check(status);
  std::cout << "timeline\t" << length << '\t' << rate << '\t' << frames(*timeline->global_start_time(), rate) << '\n';
  for (auto* const track : timeline->video_tracks()) print_track(track, length, rate);
  print_markers(timeline, rate);
}

}  // namespace

int main() {
  std::cout.precision(17);
  for (std::string path; std::getline(std::cin, path);) {
    try {
      print_timeline(path);
    } catch (std::exception const& cause) {
      std::cout << "error\t" << cause.what() << '\n';
    }
    std::cout << "end\n";
  }
}
