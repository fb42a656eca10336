#pragma once

#include <cstdio>
#include <memory>
#include <string>

namespace fingerturn::cli {

/// A file that appears in its place whole or not at all. It grows without a name beside its place,
/// so that nothing is left of a run that is killed. Where the system has no files without names it
/// has a hidden one, which a signal that ends the run takes away, but for SIGKILL.
///
/// Where something fails, errno says why.
class NewFile {
 public:
  /// A link stays a link: the file that it leads to, there or not, is the one to make or replace.
  explicit NewFile(const std::string& path);
  ~NewFile();
  NewFile(const NewFile&) = delete;
  NewFile& operator=(const NewFile&) = delete;

  [[nodiscard]] bool is_open() const noexcept { return stream_ != nullptr; }
  /// To write to. What went wrong there is told by `put_in_place` as well.
  [[nodiscard]] std::FILE* stream() const noexcept { return stream_.get(); }
  /// Takes away what was written after so many bytes.
  [[nodiscard]] bool cut_to(long size) const;

  /// Brings the file to the disk and to its place, with the permissions, the owner and the group of
  /// a file that it replaces.
  bool put_in_place();
  /// Why the owner or the group could not be kept; 0 where they were, or there was none to keep.
  [[nodiscard]] int owner_error() const noexcept { return owner_error_; }

 private:
  void open_beside();
  bool take_after_replaced();
  bool give_name();

  std::string target_;
  std::string folder_;
  std::string hidden_name_;  ///< empty while it has none
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> stream_{nullptr, std::fclose};
  int owner_error_ = 0;
};

/// Takes away the hidden file, if there is one, where the run is about to end.
void take_away_hidden_file() noexcept;

}  // namespace fingerturn::cli
