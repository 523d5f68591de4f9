//! The cameras of a Linux machine, as its kernel offers them (V4L2). Only with the feature `camera`.

use std::sync::Arc;

use crate::app::OpenCamera;
use crate::photo::{Camera, Frame, NoCamera, from_yuyv};

/// The first camera that gives pictures.
pub(super) fn source() -> OpenCamera {
    Arc::new(open)
}

#[cfg(not(target_os = "linux"))]
fn open() -> Result<Box<dyn Camera>, NoCamera> {
    Err(NoCamera::None)
}

#[cfg(target_os = "linux")]
fn open() -> Result<Box<dyn Camera>, NoCamera> {
    use linuxvideo::BufType;
    let nodes = linuxvideo::list().map_err(|why| NoCamera::of(&why, false))?;
    // One that is there and does not open is worth more words than none.
    let mut why_not = NoCamera::None;
    for device in nodes {
        let device = match device {
            Ok(device) => device,
            Err(why) => {
                why_not = NoCamera::of(&why, false);
                continue;
            }
        };
        let offered: Vec<_> = device
            .formats(BufType::VIDEO_CAPTURE)
            .filter_map(|format| format.ok().map(|format| format.pixel_format()))
            .collect();
        if offered.is_empty() {
            // A sound or control node of a camera, or the decoder of a graphics chip.
            continue;
        }
        match linux::Stream::start(device, &offered) {
            Ok(stream) => return Ok(Box::new(stream)),
            Err(why) => why_not = why,
        }
    }
    Err(why_not)
}

#[cfg(target_os = "linux")]
mod linux {
    use linuxvideo::Device;
    use linuxvideo::format::{PixFormat, PixelFormat};
    use linuxvideo::stream::ReadStream;

    use super::{Camera, Frame, NoCamera, from_yuyv};

    /// A camera that sends.
    pub(super) struct Stream {
        stream: ReadStream,
        size: (u32, u32),
        stride: usize,
        jpeg: bool,
    }

    impl Stream {
        pub(super) fn start(device: Device, offered: &[PixelFormat]) -> Result<Stream, NoCamera> {
            let wanted = [PixelFormat::MJPG, PixelFormat::JPEG, PixelFormat::YUYV];
            let format = (wanted.into_iter())
                .find(|format| offered.contains(format))
                .ok_or(NoCamera::NoFormat)?;
            let said = |why: std::io::Error| NoCamera::of(&why, false);
            // As large as it goes: the kernel takes the nearest that there is. Plain pixels of that size would come a
            // few times a second, so of them a size that every camera has.
            let (width, height) = match format {
                PixelFormat::YUYV => (1280, 720),
                _ => (u32::MAX, u32::MAX),
            };
            let capture = device
                .video_capture(PixFormat::new(width, height, format))
                .map_err(said)?;
            let now = capture.format();
            if now.pixel_format() != format {
                return Err(NoCamera::NoFormat);
            }
            let size = (now.width(), now.height());
            let stride = now.bytes_per_line() as usize;
            Ok(Stream {
                stream: capture.into_stream().map_err(said)?,
                size,
                stride,
                jpeg: format != PixelFormat::YUYV,
            })
        }
    }

    impl Camera for Stream {
        fn frame(&mut self) -> Result<Frame, NoCamera> {
            let bytes = self.stream.dequeue(|frame| Ok(frame.to_vec()));
            let bytes = bytes.map_err(|why| NoCamera::of(&why, true))?;
            if self.jpeg {
                return Ok(Frame::Jpeg(bytes));
            }
            // One that came over short is no picture; the next is a moment away.
            let rgb = from_yuyv(self.size, self.stride, &bytes).unwrap_or_default();
            let size = (self.size.0 & !1, self.size.1);
            Ok(Frame::Pixels { size, rgb })
        }
    }
}
