type Image = {
  readonly alt_text: string;
  readonly image_url?: string;
  readonly slack_file?: { readonly id: string } | { readonly url: string };
};

const addressOf = (image: Image): string | undefined => {
  if (image.slack_file !== undefined)
    return 'id' in image.slack_file ? `/files/${image.slack_file.id}` : image.slack_file.url;
  return image.image_url;
};

/** Images of the workspace are shown; one from elsewhere stays unloaded and is told by its description. */
export const ShowImage = ({ image, isSmall }: { readonly image: Image; readonly isSmall?: boolean }) => {
  const address = addressOf(image);
  const isLocal = address !== undefined && new URL(address, location.href).origin === location.origin;
  return isLocal ? (
    <img class={isSmall === true ? 'small' : 'picture'} src={address} alt={image.alt_text} />
  ) : (
    <span class="picture-text">{image.alt_text}</span>
  );
};
